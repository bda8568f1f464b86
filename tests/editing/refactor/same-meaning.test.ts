/** Whatever is offered, wherever: the sheet means the same afterwards. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Draft } from '../../../shared/checks/examine.ts';
import { refactoringsAt } from '../../../shared/editing/refactor/offered.ts';
import type { Setup } from '../../../shared/setup/setup.ts';
import { edited } from '../cursor.ts';
import { draftOf } from '../moving/moved.ts';
import { randomSheet } from '../random-sheets.ts';

test('the meaning stays', () => {
  const kinds = new Set<string>();
  fc.assert(
    fc.property(randomSheet, fc.nat(), (text, pick) => {
      const draft = draftOf(text);
      const offset = pick % (text.length + 1);
      for (const { title, edits } of refactoringsAt(draft, { from: offset, to: offset })) {
        kinds.add(
          title
            .replace(/\d.*$/u, '')
            .replace(/bar .*/u, 'bar')
            .trim(),
        );
        const after = draftOf(edited(text, edits));
        const [words, numbers] = apart(told(draft, title));
        const [wordsAfter, numbersAfter] = apart(told(after, title));
        expect(wordsAfter, title).toBe(words);
        const strays = numbers.map((number, i) => Math.abs(number - (numbersAfter[i] ?? Number.NaN)));
        expect(Math.max(...strays), title).toBeLessThan(0.002);
      }
    }),
    { numRuns: 100, seed: 4 },
  );
  expect([...kinds].length).toBeGreaterThan(4);
});

/** Lines of a block and other forms of each, some of them absent. */
const forms: readonly (readonly string[])[] = [
  [
    'paper   240 mm × 160 mm, 5 kΩ per square',
    'paper   24 cm × 16 cm, 5 kΩ per square',
    'paper   250 mm × 160 mm',
  ],
  ['supply  cell 1.5 V', 'supply  power-pack 6 V'],
  [
    'bar     N  10 mm × 120 mm at (60, 80) mm   negative',
    'bar     N  10 mm × 120 mm at (55, 80) mm, turned 5°   negative',
    'bar     N  10 mm × 120 mm at (60, 80) mm   floating',
  ],
  [
    'bar     P  10 mm × 120 mm, 100 mm right of N, turned 3°   positive',
    'bar     P  10 mm × 120 mm, 90 mm right of N   held at 1 V',
    'disc    P  diameter 30 mm, 90 mm right of N   positive',
  ],
  [
    'disc    R  diameter 20 mm, midway between N and P   floating',
    'disc    R  diameter 20 mm at centre   joined to P',
    '',
  ],
  [
    'spike   S  base 10 mm, length 20 mm, tip at (110, 30) mm pointing left   floating',
    'spike   S  base 10 mm, length 20 mm, tip at (115, 30) mm pointing up   floating',
    '',
  ],
  [
    'outline F  (20, 2) (30, 2) (20, 12) mm   floating',
    'outline F  (22, 2) (32, 2) (22, 12) mm   floating',
    '',
  ],
  ['hole disc diameter 8 mm at (200, 20) mm', 'hole disc diameter 9 mm at (200, 20) mm', ''],
  ['row     A  from N to P every 10 mm', 'row     A  from N to P in 8 steps', ''],
  ['probe   M  at (115, 120) mm', 'probe   M  at (115, 110) mm', ''],
  ['# what is measured', ''],
];

test('a variation means what the block meant that it replaces', () => {
  let written = 0;
  const choices = fc.tuple(
    ...forms.map((of) =>
      fc.oneof(
        { weight: 4, arbitrary: fc.constant(of[0]) },
        { weight: 1, arbitrary: fc.constantFrom(...of) },
      ),
    ),
  );
  const frame = fc.record({ prefix: fc.constantFrom('', '> ', '  '), end: fc.constantFrom('\n', '\r\n') });
  fc.assert(
    fc.property(choices, choices, frame, (first, second, { prefix, end }) => {
      const block = (name: string, lines: readonly (string | undefined)[]): readonly string[] =>
        [`\`\`\`electrodes ${name}`, ...lines.filter((line) => line !== ''), '```', ''].map(String);
      const text = [
        ...block('one', first),
        ...block('two', second),
        ...['```electrodes three like two', 'change R floating', '```'],
      ]
        .map((line) => `${prefix}${line}${end}`)
        .join('');
      const draft = draftOf(prefix === '  ' ? `- list${end}${end}${text}` : text);
      const at = draft.sheet.source.text.indexOf('electrodes two');
      const variation = refactoringsAt(draft, { from: at, to: at }).find(({ title }) =>
        title.includes('variation'),
      );
      if (variation === undefined) return;
      written++;
      const after = draftOf(edited(draft.sheet.source.text, variation.edits));
      expect(apart(told(after, ''))).toEqual(apart(told(draft, '')));
    }),
    { numRuns: 120, seed: 6 },
  );
  expect(written).toBeGreaterThan(30);
});

/** The words and the numbers of it: outlines of turned bars are written to 0.001 mm. */
function apart(told: unknown): readonly [string, readonly number[]] {
  const numbers: number[] = [];
  const words = JSON.stringify(told, (_, value: unknown) => {
    if (typeof value !== 'number') return value;
    numbers.push(value);
    return '#';
  });
  return [words, numbers];
}

/** What the paper shows: metal by its boxes and corners, readings by their places. A row that is added is left out. */
function told({ setups, sheet, binding }: Draft, title: string): unknown {
  const added = /^Add row (\S+)/u.exec(title)?.[1];
  return {
    setups: setups.map((setup) => setupTold(setup, added)),
    findings: [...sheet.blocks.flatMap(({ block }) => block.findings), ...binding.findings].map(
      ({ code }) => code,
    ),
  };
}

/** A variation may give its things in another order. */
const byName = <T extends { readonly name: string }>(list: readonly T[]): readonly T[] =>
  [...list].sort((a, b) => a.name.localeCompare(b.name, 'en'));

function setupTold(setup: Setup, added: string | undefined): unknown {
  const at = ({ x, y }: { x: number; y: number }): unknown => [x, y];
  return {
    name: setup.name,
    paper: setup.paper === null ? null : { ...setup.paper, span: null },
    supply: setup.supply === null ? null : { ...setup.supply, span: null },
    metal: byName(setup.electrodes).map(({ name, box, connection, pieces }) => ({
      name,
      connection,
      box: Object.values(box),
      corners: pieces.map(({ geometry }) => geometry.outer.edges.map(({ from }) => at(from))),
    })),
    probes: byName(setup.probes).map((probe) => [probe.name, at(probe.at), probe.on]),
    rows: byName(setup.rows)
      .filter(({ name }) => name !== added)
      .map((row) => [row.name, row.points.map((one) => at(one.at))]),
    findings: setup.findings.map(({ code }) => code),
  };
}
