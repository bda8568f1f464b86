/** Every word of the language stands in completion, and in the guide; that the grammars know it is tested beside this. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { words } from '../../shared/block/words.ts';
import { completionsAt } from '../../shared/editing/index.ts';
import { frontMatterKeys } from '../../shared/sheet/front-matter.ts';
import { insertHeads } from '../../shared/sheet/inserts/parse-insert.ts';
import { passageWords } from '../../shared/sheet/markdown/passage-line.ts';
import { twoSetups, withCursor } from '../editing/cursor.ts';

const guide = readFileSync(new URL('../../docs/language.md', import.meta.url), 'utf8');

/** What is offered at the cursor of a line at the end of a sheet. */
function offered(line: string): readonly string[] {
  const { draft, offset } = withCursor(`${twoSetups}\n${line}\n`);
  return completionsAt(draft, offset).map(({ label }) => label);
}
const inBlock = (line: string): readonly string[] =>
  offered(`\`\`\`electrodes further like bars\n${line}‸\n\`\`\``);

describe('a word of a block is offered', () => {
  /** Beginnings of lines; behind each stands a word that nothing else is behind. */
  const lines = [
    'paper ',
    'paper A4 ',
    'paper 240 mm × 160 mm, 5 kΩ ',
    'paper 240 mm × 160 mm, 5 kΩ per square ',
    'supply ',
    'supply cell 1.5 V ',
    'supply eht 1.5 kV ',
    'meter 10 MΩ, ',
    'reverse ',
    'bar Q 10 mm ',
    'bar Q 10 mm wide, 10 mm ',
    'bar Q 10 mm × 10 mm ',
    'bar Q 10 mm × 10 mm, 10 mm ',
    'bar Q 10 mm × 10 mm, midway between N ',
    'bar Q 10 mm × 10 mm at ',
    'bar Q 10 mm × 10 mm at centre ',
    'disc Q ',
    'ring Q ',
    'ring Q diameter 50 mm, ',
    'ring Q diameter 50 mm, wall 5 mm ',
    'ring Q diameter 50 mm, wall 5 mm, opening 5 mm ',
    'ring Q diameter 50 mm, wall 5 mm, opening 5 mm facing ',
    'spike Q ',
    'spike Q base 5 mm ',
    'spike Q base 5 mm, length 5 mm ',
    'spike Q base 5 mm, length 5 mm on N ',
    'strip Q (20, 20) (20, 40) mm, ',
    'hole ',
    'row Q ',
    'row Q from N ',
    'row Q from N to P ',
    'row Q from N to P 11 ',
    'row Q from N to P in 10 ',
    'draw ',
    'draw electrodes ',
    'draw electrodes for ',
  ];
  const found = new Set([
    ...offered('```‸'),
    ...offered('```electrodes further ‸\n```'),
    ...inBlock(''),
    ...lines.flatMap(inBlock),
  ]);

  test.each([...new Set(words.map(({ word }) => word))])('%s', (word) => {
    expect(found).toContain(word);
  });
});

describe('is offered in an insert', () => {
  const found = offered('?{‸}');
  test.each(insertHeads)('%s', (head) => {
    expect(found).toContain(head);
  });
});

describe('opens a passage, is offered behind colons and stands in the guide:', () => {
  const found = offered('::: ‸');
  // Read for pupils, and mended to that.
  test.each(passageWords.filter((word) => word !== 'students'))('%s', (word) => {
    expect(found).toContain(word);
    expect(guide.includes(`\`${word}\``)).toBe(true);
  });
});

describe('is offered in the front matter', () => {
  const { draft, offset } = withCursor(`---\n‸\n---\n\n${twoSetups}`);
  const found = completionsAt(draft, offset).map(({ label }) => label);
  test.each(frontMatterKeys)('%s', (key) => {
    expect(found).toContain(key);
  });
});
