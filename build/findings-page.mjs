// Writes docs/findings.md from the catalogue of findings and their explanations. With --print the text goes to standard output.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load, root } from './core.mjs';

const { toldFamilies } = await load(
  `export { toldFamilies } from './shared/findings/explanations/index.ts';`,
);
const text = page(toldFamilies());
if (process.argv.includes('--print')) process.stdout.write(text);
else writeFileSync(join(root, 'docs/findings.md'), text);

function page(families) {
  const contents = families.map(({ about }) => `- [${about}](#${anchor(about)})`);
  const sections = families.map(({ about, told }) => `## ${about}\n\n${told.map(entry).join('\n')}`);
  return `# Findings

Everything that Papervolt may say about a sheet: what it means, why it matters, how it looks wrong and right, and on whose
word. The code stands in every message, and in an allowance ([how to allow one](language.md#findings-and-allowing-them)).
\`papervolt explain CODE\` tells the same in a terminal. The severity is the usual one; a few findings are milder or graver
where the sheet or [the department](department.md) makes them so.

- \`stop\`: not a pupil practical as written. It cannot be allowed, and pupils get no print.
- \`error\`: something could not be read or solved, or a quantity says something else than is meant.
- \`warning\`: probably not what you meant. \`papervolt check --strict\` fails on it.
- \`note\`: worth knowing.

No finding is not clearance: this list is not complete, and the rules of whoever holds the duty where you work come first.

${contents.join('\n')}

Excerpts are lines of a block, or text of a sheet, and stand for themselves: paper, supply, two bars N and P and a probe M
have to be thought round them. Written by \`node build/findings-page.mjs\`; tests hold that each wrong excerpt has its
finding, that each right one has not, and this page.

${sections.join('\n')}`;
}

function entry({ code, severity, meaning, why, wrong, right, department, source, allowance }) {
  const parts = [
    `### ${code}`,
    `\`${severity}\`: ${line(meaning)}`,
    line(why),
    ...example('Where `department.yaml` says', department),
    ...example('Wrong:', wrong),
    ...example('Right:', right),
    allowance.kind === 'line'
      ? `Allowed, with a reason, by a line above:\n\n${fenced(allowance.line)}`
      : allowance.because,
    `Source: ${line(source)}.`,
  ];
  return `${parts.join('\n\n')}\n`;
}

function example(heading, excerpt) {
  return excerpt === null || excerpt === undefined ? [] : [heading, fenced(excerpt)];
}

/** Text in a fence longer than any in it, which is no block: this page is no sheet. */
function fenced(excerpt) {
  const fence = excerpt.includes('```') ? '````' : '```';
  return `${fence}text\n${excerpt}\n${fence}`;
}

/** Text on one line. */
function line(written) {
  return written.replace(/\s+/g, ' ');
}

/** Of a heading, as Markdown viewers make it. */
function anchor(heading) {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');
}
