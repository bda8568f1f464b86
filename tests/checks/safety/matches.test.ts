/** What is known of the last text changes nothing: after any edit the same is found as in a text that is looked at for the first time. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hazards } from '../../../shared/checks/safety/hazards/index.ts';
import { Matches } from '../../../shared/checks/safety/reading/matches.ts';
import { plain } from '../../../shared/checks/safety/reading/safety-text.ts';

const sample = readFileSync(new URL('../../../samples/parallel-bars.md', import.meta.url), 'utf8');
const lines = sample.split('\n').map(plain);
const patterns = hazards.flatMap(({ notes }) => notes.flatMap(({ said }) => said.map(({ lead }) => lead)));
const found = (matches: Matches, pattern: RegExp) =>
  matches.of(pattern).map(({ from, match: [text] }) => `${from} ${text}`);

describe('matches', () => {
  it('are there to be found', () => {
    const matches = Matches.in(lines.join('\n'));
    expect(patterns.length).toBeGreaterThan(40);
    expect(patterns.filter((pattern) => matches.of(pattern).length > 0).length).toBeGreaterThan(10);
  });

  it('never go beyond their line', () => {
    const matches = Matches.in('keep\nthe clips apart, then\nthe bars');
    expect(found(matches, /clips[^.]*bars|apart|keep[^.]*clips/gu)).toEqual(['15 apart']);
  });

  it('are the same with and without a text before', () => {
    const part = fc.constantFrom('', '\n', 'clips', ' last ', 'hot\nwarm', 'sharp edges of copper\n', '.');
    const edit = fc.record({ at: fc.nat(), length: fc.nat({ max: 400 }), text: part });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
        let text = lines.join('\n');
        let warm = Matches.in(text);
        for (const pattern of patterns) warm.of(pattern);
        for (const { at, length, text: put } of edits) {
          const place = at % (text.length + 1);
          text = text.slice(0, place) + put + text.slice(place + length);
          warm = Matches.in(text, warm);
          const cold = Matches.in(text);
          for (const pattern of patterns) expect(found(warm, pattern)).toEqual(found(cold, pattern));
        }
      }),
      { numRuns: 40 },
    );
  });
});
