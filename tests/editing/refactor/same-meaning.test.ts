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
        expect(told(after, title), title).toEqual(told(draft, title));
      }
    }),
    { numRuns: 100, seed: 4 },
  );
  expect([...kinds].length).toBeGreaterThan(4);
});

/** What the paper shows: metal by its boxes, readings by their places, to 0.01 mm. A row that is added is left out. */
function told({ setups, sheet, binding }: Draft, title: string): unknown {
  const added = /^Add row (\S+)/u.exec(title)?.[1];
  return {
    setups: setups.map((setup) => setupTold(setup, added)),
    findings: [...sheet.blocks.flatMap(({ block }) => block.findings), ...binding.findings].map(
      ({ code }) => code,
    ),
  };
}

function setupTold(setup: Setup, added: string | undefined): unknown {
  const near = (mm: number): number => Math.round(mm * 100) / 100 + 0;
  const at = ({ x, y }: { x: number; y: number }): unknown => [near(x), near(y)];
  return {
    name: setup.name,
    paper: setup.paper === null ? null : { ...setup.paper, span: null },
    supply: setup.supply === null ? null : { ...setup.supply, span: null },
    metal: setup.electrodes.map(({ name, box, connection, pieces }) => ({
      name,
      connection,
      box: Object.values(box).map(near),
      corners: pieces.map(({ geometry }) => geometry.outer.edges.map(({ from }) => at(from))),
    })),
    probes: setup.probes.map((probe) => [probe.name, at(probe.at), probe.on]),
    rows: setup.rows
      .filter(({ name }) => name !== added)
      .map((row) => [row.name, row.points.map((one) => at(one.at))]),
    findings: setup.findings.map(({ code }) => code),
  };
}
