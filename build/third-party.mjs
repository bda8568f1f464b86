// Writes THIRD-PARTY.md: name, version, use and licence text of every package that ends up in the bundles of `dist/`: what package.json
// names under "dependencies", and what those packages need in turn. Reads node_modules alone. With --print the text goes to standard output.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const text = notices(bundledPackages());
if (process.argv.includes('--print')) process.stdout.write(text);
else writeFileSync(join(root, 'THIRD-PARTY.md'), text);

/** Every package below package.json's dependencies, once each, by name. */
function bundledPackages() {
  const found = new Map();
  const visit = (folder, neededBy) => {
    const { dependencies = {} } = manifest(folder);
    for (const name of Object.keys(dependencies).sort()) {
      const place = folderOf(name, folder);
      const known = found.get(place);
      if (known) known.neededBy.push(neededBy);
      else {
        const { version, license } = manifest(place);
        found.set(place, { name, version, license, place, neededBy: [neededBy] });
        visit(place, name);
      }
    }
  };
  visit(root, null);
  return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

function manifest(folder) {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
}

/** Where Node finds a package from a folder: the nearest node_modules upward. */
function folderOf(name, from) {
  for (let folder = from; ; folder = dirname(folder)) {
    const place = join(folder, 'node_modules', name);
    if (existsSync(join(place, 'package.json'))) return place;
    if (folder === dirname(folder)) throw new Error(`${name} is not installed: run npm ci.`);
  }
}

/** Texts of all licence files of a package. */
function licenceTexts({ name, place }) {
  const files = readdirSync(place)
    .filter((file) => /^(licen[cs]e|copying|notice|unlicense)([.-].*)?$/i.test(file))
    .sort();
  if (files.length === 0) throw new Error(`${name} has no licence file: add its notice by hand.`);
  return files.map((file) => readFileSync(join(place, file), 'utf8').replace(/\r\n?/g, '\n').trim());
}

function notices(packages) {
  const sections = packages.map((found) => {
    const users = found.neededBy.filter((name) => name !== null).sort();
    const use = found.neededBy.includes(null) ? 'Used by Papervolt' : 'Needed';
    const by = users.length === 0 ? '' : `${use === 'Needed' ? '' : ', needed'} by ${users.join(', ')}`;
    const texts = licenceTexts(found).map((licence) => `~~~~text\n${licence}\n~~~~`);
    return `## ${found.name} ${found.version}\n\n${found.license}. ${use}${by}.\n\n${texts.join('\n\n')}\n`;
  });
  return `# Third-party software

Papervolt's programs carry the packages below, with their licences. Tools that only build and test are not part of them.
Written by \`node build/third-party.mjs\`; a test holds this file against what is installed.

${sections.join('\n')}`;
}
