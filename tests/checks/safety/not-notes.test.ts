/** Words that are near a note and are none: they hide no note that is missing. */
import { expect, it, test } from 'vitest';
import { phrasings } from './phrasings.ts';
import { findingsOf, sheetWith } from './safety.ts';

const cases: Readonly<Record<string, readonly (readonly [note: string, said: string])[]>> = {
  'clips-shorted': [
    ['keep the clips apart', 'Do not touch the electrodes with your fingers.'],
    ['keep the clips apart', 'Clip both leads on without creases; touch P with the probe.'],
    ['keep the clips apart', 'Touch the positive bar with the probe.'],
    ['keep the clips apart', 'The bars never move. Touch P and read the meter.'],
    ['keep the clips apart', 'Join the dots of each line.'],
    ['keep the clips apart', 'The bars stand 100 mm from the edge.'],
    ['join the supply last', 'Join the dots last.'],
    ['join the supply last', 'Finally, join the dots and label them.'],
    ['join the supply last', 'Last lesson you joined cells in series.'],
    ['join the supply last', 'Connect the cell as drawn.'],
    ['join the supply last', 'Read the first column before the last one.'],
    ['disconnect if anything grows warm', 'A short circuit makes the leads hot.'],
    ['disconnect if anything grows warm', 'Take the paper from a warm, dry place.'],
    ['disconnect if anything grows warm', 'Disconnect the cell at the end.'],
  ],
  'copper-edges': [
    ['the edges are sharp: hold the pieces where they do not cut', 'Keep away from the edges of the paper.'],
    ['count the pieces out and in', 'Count the squares between the bars.'],
    ['deburr the edges before the pieces are issued', 'Join the dots with a smooth line.'],
  ],
  'probe-point': [
    ['keep it away from eyes and skin', 'Read the meter at eye level.'],
    ['cap it or count it', 'Press with the probe and count the dots. '],
  ],
  'power-pack': [
    ['use an inspected and tested unit', 'Check that the supply reads 5 V.'],
    ['start from its lowest setting', 'Turn the supply to 5 V.'],
    ['use the d.c. terminals', 'Connect the bars to the terminals.'],
    ['keep it dry', 'Use dry paper.'],
  ],
  'paper-dust': [['wash hands or wipe the bench afterwards', 'Put up your hands when you are done.']],
};

const all = Object.entries(cases).flatMap(([code, list]) =>
  list.map(([note, said]) => ({ code, note, said })),
);

test.each(all)('$said', ({ code, note, said }) => {
  const { supply, block } = phrasings[code] ?? {};
  const sheet = sheetWith({
    ...(supply !== undefined && { supply }),
    ...(block !== undefined && { block }),
    notes: ['Take care.'],
    text: said,
  });
  const titles = findingsOf(sheet).flatMap(({ fixes }) => fixes.map(({ title }) => title));
  expect(titles).toContain(`Add a draft: ${note}`);
});

it('nor in the notes on safety themselves', () => {
  const notes = all.filter(({ code, note }) => code === 'clips-shorted' && !note.startsWith('disconnect'));
  const [found] = findingsOf(sheetWith({ notes: notes.map(({ said }) => said) }));
  expect(found?.message).toContain(
    'keep the clips apart; join the supply last; disconnect if anything grows warm',
  );
});
