// Writes docs/findings.md from the catalogue of findings, and with it the schema of a department's file. With --print the text goes to standard output.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load, root } from './core.mjs';

/** Tables of the catalogue: the file and its export, and what the findings in it are about. */
const tables = [
  ['block-codes.ts', 'blockCodes', 'How a line of a block is written'],
  ['setup-codes.ts', 'setupCodes', 'What the lines of a block mean together'],
  ['sheet-codes.ts', 'sheetCodes', 'The sheet around the blocks'],
  ['prose-codes.ts', 'proseCodes', 'Quantities and units in the text'],
  ['check-codes.ts', 'checkCodes', 'The sheet, its setups and their solutions together'],
  ['department-codes.ts', 'departmentCodes', 'The file of a department'],
];

const exported = tables.map(([file, name]) => `export { ${name} } from './shared/findings/${file}';`);
const text = page(await load(exported.join('\n')));
if (process.argv.includes('--print')) process.stdout.write(text);
else {
  writeFileSync(join(root, 'docs/findings.md'), text);
  // Its codes are keys of a department's file.
  await import('./department-schema.mjs');
}

function page(codes) {
  const sections = tables.map(([, name, about]) => {
    const entries = Object.entries(codes[name]).map(([code, { severity, meaning, source }]) => {
      const from = source === undefined ? '' : ` Source: ${line(source)}.`;
      return `### ${code}\n\n\`${severity}\`: ${line(meaning)}${from}\n`;
    });
    return `## ${about}\n\n${entries.join('\n')}`;
  });
  return `# Findings

Everything that Papervolt may say about a sheet. The code stands in every message, and in an allowance
([how to allow one](language.md#findings-and-allowing-them)). The severity is the usual one; a few findings are milder or graver where the sheet makes them so.

- \`stop\`: not a pupil practical as written. It cannot be allowed, and pupils get no print.
- \`error\`: something could not be read or solved, or the text says another thing than is meant. Only teachers get a print; errors in
  [quantities and units of the text](#quantities-and-units-in-the-text) alone hold no print back.
- \`warning\`: probably not what you meant. \`papervolt check --strict\` fails on it.
- \`note\`: worth knowing.

A source stands behind rules that say something about physics or the trade. No finding is not clearance: this list is not complete.

Written by \`node build/findings-page.mjs\` from the catalogue; a test holds this page against it.

${sections.join('\n')}`;
}

/** Text on one line. */
function line(written) {
  return written.replace(/\s+/g, ' ');
}
