// Draws the five pictures of the extension's walkthrough into client/media/walkthrough/, with drawings, values and findings as the core
// gives them. With --print they go to standard output, as one JSON object of file and text.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load, root } from './core.mjs';

const core = await load(`
  export { examineSheet, printSheets } from './shared/index.ts';
  export { outlineScene } from './shared/drawing/outline-scene.ts';
  export { solvedScene } from './shared/drawing/solved-scene.ts';
  export { renderSvg } from './shared/drawing/svg.ts';
  export { slipAt } from './shared/editing/panel/slip.ts';
  export { fieldReader, fieldStages } from './shared/setup/solve-setup.ts';
  export { drained } from './shared/field/solve/stages.ts';
  export { escapeText } from './shared/text/escape.ts';
`);

const block = `paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V
meter   10 MΩ, resolution 0.01 V
bar     N  10 mm × 120 mm at (60, 80) mm                negative
bar     P  10 mm × 120 mm, 100 mm right of N            positive
disc    D  diameter 40 mm, midway between N and P       floating
probe   M  at (90, 105) mm`;
const question = 'The voltmeter shows ?{M} at M.';
const sheet = `\`\`\`electrodes bars\n${block}\n\`\`\`\n\n${question}\n`;
const examined = (text) => core.examineSheet({ name: 'bars.md', text });
const { setups, solutions } = examined(sheet);
const [setup] = setups;

// The pictures are paper on whatever ground the editor has, so that their colours are fixed.
const ink = '#1C1C1C';
const field = '#005A8C';
const copper = '#8A4500';
const finding = '#B34700';
const faint = '#9A9A9A';
const sans = "system-ui, -apple-system, 'Segoe UI', Roboto, 'Liberation Sans', Arial, sans-serif";
const mono = "ui-monospace, 'Cascadia Mono', Menlo, Consolas, 'Liberation Mono', monospace";
const width = 480;

const pictures = {
  write: picture(
    472,
    'A block and its setup',
    card(0, 0, width, 156) +
      code(14, 26, ['```electrodes bars', ...block.split('\n'), '```'], 15.5) +
      card(0, 168, width, 304) +
      drawing('outline', [6, 174, 468, 292]),
  ),
  solved: picture(
    380,
    'The solved setup, and a reading',
    card(0, 0, width, 320) +
      drawing('solved', [6, 6, 468, 308]) +
      card(0, 332, width, 48) +
      text(width / 2, 362, slip(), { size: 15, anchor: 'middle' }),
  ),
  inserts: picture(312, 'Asked: a blank for pupils, a value for teachers', inserts()),
  findings: picture(228, 'A slip, the finding and its fix', slipFound()),
  print: picture(
    216,
    'Prints for pupils, teachers and technicians',
    ['pupils', 'teachers', 'technicians'].map(print).join(''),
  ),
};

const files = Object.entries(pictures).map(([name, svg]) => [`client/media/walkthrough/${name}.svg`, svg]);
if (process.argv.includes('--print')) process.stdout.write(JSON.stringify(Object.fromEntries(files)));
else {
  mkdirSync(join(root, 'client/media/walkthrough'), { recursive: true });
  for (const [file, svg] of files) writeFileSync(join(root, file), svg);
}

function picture(height, title, content) {
  const box = `width="${width + 4}" height="${height + 4}" viewBox="-2 -2 ${width + 4} ${height + 4}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${box} font-family="${sans}" fill="${ink}">\n<title>${core.escapeText(title)}</title>\n${content}</svg>\n`;
}

function card(x, y, w, h) {
  return `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="6" fill="#FFFFFF" stroke="${faint}"/>\n`;
}

function text(
  x,
  y,
  said,
  { size = 13, anchor = 'start', weight = 400, fill = ink, font = sans, stretch = 0 } = {},
) {
  const look = `font-family="${font}" font-size="${size}" font-weight="${weight}" text-anchor="${anchor}" fill="${fill}"`;
  const wide = stretch === 0 ? '' : ` textLength="${stretch}" lengthAdjust="spacingAndGlyphs"`;
  return `<text x="${x}" y="${y}" ${look}${wide} xml:space="preserve">${core.escapeText(said)}</text>\n`;
}

/** Lines of a sheet in letters of one width; the first word of each and its terminal stand out. */
function code(x, y, lines, step) {
  return lines
    .map((line, i) => {
      const [, first, rest, last = ''] = /^(\S+)(.*?)((?:positive|negative|floating)?)$/u.exec(line) ?? [];
      const spans = [
        ['tspan', field, first],
        ['tspan', ink, rest],
        ['tspan', copper, last],
      ].filter(([, , said]) => said !== '');
      const inside = spans
        .map(([, fill, said]) => `<tspan fill="${fill}">${core.escapeText(said)}</tspan>`)
        .join('');
      return `<text x="${x}" y="${y + i * step}" font-family="${mono}" font-size="11.5" xml:space="preserve">${inside}</text>\n`;
    })
    .join('');
}

/** A drawing of the setup that fills a box. */
function drawing(kind, [x, y, w, h], id = kind) {
  const look = { audience: 'teachers', scale: 0.7 };
  const scene =
    kind === 'solved'
      ? core.solvedScene(setup, solutions.get(0), {
          ...look,
          parts: ['electrodes', 'probes', 'equipotentials', 'field-lines', 'values'],
        })
      : core.outlineScene(setup, {
          ...look,
          parts: kind === 'sizes' ? ['electrodes', 'dimensions'] : ['electrodes', 'probes'],
        });
  // A group, since the editor's page for walkthroughs moves every element of the name svg to its middle.
  const k = Math.min(w / scene.width, h / scene.height);
  const left = x + (w - k * scene.width) / 2 - k * scene.left;
  const top = y + (h - k * scene.height) / 2;
  const place = [left, top, k].map((value) => Math.round(value * 1000) / 1000);
  return core
    .renderSvg(scene, { id })
    .replace(/<title[\s\S]*?<\/desc>\n/, '')
    .replace(/<svg [^>]*>/, `<g transform="translate(${place[0]} ${place[1]}) scale(${place[2]})">`)
    .replace('</svg>', '</g>');
}

/** What the reading slip of the panel says of a place. */
function slip() {
  const { field: found } = core.drained(core.fieldStages(setup, { gap: 1e-6 }));
  return core.slipAt(setup, core.fieldReader(setup, found), { x: 90, y: 105 }).text;
}

function inserts() {
  const valueFor = (audience) => {
    const [{ html }] = core.printSheets(examined(sheet), [audience]);
    return /class="together">([^<]*)</.exec(html)?.[1] ?? '';
  };
  const [before, after] = question.split('?{M}');
  const shown = [
    ['In the sheet', text(18, 0, question, { size: 15, font: mono })],
    ['Pupils get', sentence(before, { said: 'V', room: 114, rule: 86 }, after)],
    ['Teachers get', sentence(before, { said: valueFor('teachers'), room: 60 }, after)],
  ];
  return shown
    .map(([who, line], i) => {
      const inside = `${text(18, 26 + i * 108, who, { size: 12, weight: 600, fill: field })}<g transform="translate(0 ${64 + i * 108})">\n${line}</g>\n`;
      return card(0, i * 108, width, 96) + inside;
    })
    .join('');
}

/** Text is not as wide on every machine, so each part has its place and the first is stretched to it. */
function sentence(before, { said, room, rule = 0 }, after) {
  const at = 176;
  const line = rule === 0 ? '' : `<path d="M${at} 4h${rule}" stroke="${ink}" fill="none"/>\n`;
  const weight = rule === 0 ? 600 : 400;
  return (
    text(18, 0, before.trim(), { size: 15, stretch: at - 24 }) +
    line +
    text(at + (rule === 0 ? 0 : rule + 6), 0, said, { size: 15, weight }) +
    text(at + room, 0, after.trim(), { size: 15 })
  );
}

function slipFound() {
  const wrong = sheet.replace('cell 1.5 V', 'cell 1,5 V');
  const found = examined(wrong).findings.find(({ code }) => code === 'decimal-comma');
  const line = 'supply  cell 1,5 V';
  const letter = 9;
  const from = 18 + line.indexOf('1,5') * letter;
  const waves = 'q1.35 -3 2.7 0t2.7 0'.repeat(5);
  const [first, second] = found.message.split(/(?<=\.) /u);
  return (
    card(0, 0, width, 64) +
    // As wide on every machine, so that the wave stays below its figures.
    text(18, 38, line, { size: 15, font: mono, stretch: line.length * letter }) +
    `<path d="M${from} 46${waves}" fill="none" stroke="${finding}" stroke-width="1.5"/>\n` +
    card(0, 76, width, 88) +
    text(18, 102, `${found.severity}  ${found.code}`, { size: 12, weight: 600, fill: finding }) +
    text(18, 124, first, { size: 13 }) +
    text(18, 144, second ?? '', { size: 13 }) +
    card(0, 176, width, 48) +
    text(18, 205, found.fixes[0].title, { size: 14, weight: 600, fill: field })
  );
}

/** A printed page as its reader gets it: spine, word, notches, drawing, and what is written or left blank. */
function print(audience, i) {
  const x = i * 165;
  const notches = Array.from(
    { length: i },
    (_, n) => `<path d="M${x + 150} ${4 + n * 14}v11l-10 -5.5z" fill="${ink}"/>\n`,
  ).join('');
  const kind = { pupils: 'outline', teachers: 'solved', technicians: 'sizes' }[audience];
  const lines = [152, 168, 184, 200].map((y, n) =>
    audience === 'pupils'
      ? `<path d="M${x + 26} ${y}h112" stroke="${ink}" fill="none"/>\n`
      : `<rect x="${x + 26}" y="${y - 6}" width="${n === 3 ? 64 : 112}" height="4" fill="${faint}"/>\n`,
  );
  return `<rect x="${x}" y="0" width="150" height="212" fill="#FFFFFF" stroke="${faint}"/>
<path d="M${x + 14} 0v212" stroke="${ink}" stroke-width="0.8"/>
${text(x + 24, 24, `For ${audience}`, { size: 12, weight: 700 })}<path d="M${x + 24} 32h116" stroke="${ink}"/>
${notches}${drawing(kind, [x + 17, 38, 130, 100], `print-${audience}`)}${lines.join('')}`;
}
