// Draws the icon: a clipped sheet, three carbon dots curving between two hatched bars. Writes client/media/icon.svg, and client/media/icon.png
// from it by the system's rsvg-convert.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const media = join(dirname(dirname(fileURLToPath(import.meta.url))), 'client/media');
const ink = '#1C1C1C';
const copper = '#8A4500';
// Also a rim round all, so that the icon stands out on a dark ground.
const paper = '#FFFFFF';

const sheet = '<rect x="17" y="46" width="222" height="196" rx="6"/>';
const clip =
  '<path fill-rule="evenodd" d="M80 76L88 34H104V30A24 18 0 0 1 152 30V34H168L176 76ZM116 34H140V30A12 8 0 0 0 116 30Z"/>';

const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="256" height="256" viewBox="0 0 256 256">
<title>Papervolt</title>
<defs>
${['left', 'right'].map((side) => `<clipPath id="${side}">${bar(side)}</clipPath>`).join('\n')}
</defs>
<g fill="${paper}" stroke="${paper}" stroke-width="16" stroke-linejoin="round">
${sheet}
${clip}
</g>
<g fill="${paper}" stroke="${ink}" stroke-width="10">${sheet}</g>
<g fill="${ink}">${clip}</g>
${['left', 'right'].map(hatched).join('\n')}
<g fill="${ink}">
${[
  [118, 112],
  [142, 158],
  [118, 204],
]
  .map(([x, y]) => `<circle cx="${x}" cy="${y}" r="16"/>`)
  .join('\n')}
</g>
</svg>
`;
writeFileSync(join(media, 'icon.svg'), svg);
const png = [
  '--width',
  '256',
  '--height',
  '256',
  join(media, 'icon.svg'),
  '--output',
  join(media, 'icon.png'),
];
execFileSync('rsvg-convert', png, { stdio: 'inherit' });

/** A standing bar of 40 by 128. */
function bar(side) {
  return `<rect x="${side === 'left' ? 38 : 178}" y="94" width="40" height="128"/>`;
}

/** Hatch at 45°, 24 apart, so that it can be told at 32 pixels. */
function hatched(side) {
  const left = side === 'left' ? 38 : 178;
  const lines = [0, 1, 2, 3, 4, 5, 6, 7].map(
    (i) => `M${left - 10} ${106 + 24 * i}L${left + 50} ${46 + 24 * i}`,
  );
  return [
    `<path clip-path="url(#${side})" d="${lines.join('')}" stroke="${copper}" stroke-width="9"/>`,
    bar(side).replace('/>', ` fill="none" stroke="${copper}" stroke-width="9"/>`),
  ].join('\n');
}
