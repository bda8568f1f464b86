/** Notes are found however they are put: with one in any of its phrasings it is not missed, without it it is. */
import { describe, expect, it, test } from 'vitest';
import type { Hazard, Note } from '../../../shared/checks/safety/hazard.ts';
import { hazards } from '../../../shared/checks/safety/hazards/index.ts';
import { phrasings } from './phrasings.ts';
import { cellNotes, findingsOf, sheetWith } from './safety.ts';

/** What is said of a note in the finding of its hazard. */
function missedIn(hazard: Hazard, note: Note, said: readonly string[]): boolean {
  const { supply, block, text } = phrasings[hazard.code] ?? { notes: {} };
  const usual = ['clips-shorted', 'paper-dust', 'soldering'].includes(hazard.code) ? [] : cellNotes;
  const sheet = sheetWith({
    ...(supply !== undefined && { supply }),
    ...(block !== undefined && { block }),
    text: text?.replace(/ PEOPLE$/, '') ?? '',
    notes: [...usual, 'Take care.', ...said],
  });
  const found = findingsOf(sheet).find(({ code }) => code === hazard.code);
  return found?.fixes.some(({ title }) => title === `Add a draft: ${note.name}`) ?? false;
}

const all = hazards.flatMap((hazard) =>
  hazard.notes.map((note) => ({ hazard, note, code: hazard.code, name: note.name })),
);

it('each note of the table has phrasings', () => {
  expect(Object.keys(phrasings).sort()).toEqual(hazards.map(({ code }) => code).sort());
  for (const { code, name } of all)
    if (!(code === 'cutting-tools' && name.startsWith('protect')))
      expect({ code, name, count: (phrasings[code]?.notes[name] ?? []).length }).toMatchObject({
        count: expect.toSatisfy((n: number) => n >= (code === 'alternating-supply' ? 1 : 6)),
      });
});

describe.each(all.filter(({ code, name }) => phrasings[code]?.notes[name]))(
  '$code: $name',
  ({ hazard, note, code, name }) => {
    it('is missed where it does not stand', () => {
      expect(missedIn(hazard, note, [])).toBe(true);
    });

    test.each(phrasings[code]?.notes[name] ?? [])('%s', (said) => {
      expect(missedIn(hazard, note, [said])).toBe(false);
    });

    it('its draft', () => {
      expect(missedIn(hazard, note, [note.draft])).toBe(false);
      if (note.draftAmerican !== undefined) expect(missedIn(hazard, note, [note.draftAmerican])).toBe(false);
    });
  },
);
