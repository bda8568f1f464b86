/** What a sheet denies, asks, quotes or only talks about makes no hazard; and a sentence that begins with “Never” never makes one. */
import { describe, expect, it, test } from 'vitest';
import { phrasings } from './phrasings.ts';
import { codesOf, sheetWith } from './safety.ts';

const plain = codesOf(sheetWith());
const withText = (text: string): readonly string[] => codesOf(sheetWith({ text }));

it('a plain sheet has no finding', () => {
  expect(plain).toEqual([]);
});

describe('used', () => {
  test.each([
    ['Fill the dish with sunflower oil.', ['oil']],
    ['The leads are soldered to the pins.', ['pins', 'soldering']],
    ['Wipe the bars with meths.', ['alcohol']],
    ['Fix it with drawing pins.', ['pins']],
    ['## Apparatus\n\n- scalpel\n- petri dish', ['cutting-tools', 'glass']],
    ['What you need: copper strips, pins', ['copper-edges', 'pins']],
    ['Cut the hole with a craft knife.', ['cutting-tools']],
    ['Don’t use mains; use the candle.', ['flame']],
    ['No flour here, but sprinkle semolina on it.', ['grain']],
    ['Use two cells in parallel.', ['cells-parallel']],
    ['Leads are 2 m long.', ['leads-trailing']],
  ])('%s', (text, codes) => {
    expect(withText(text)).toEqual(codes);
  });
});

describe('not used', () => {
  test.each([
    'No oil is used.',
    'The leads are 1 m long.',
    'Leads of 0.5 m are long enough; a wire of 3 mm is too thick.',
    'Oil is not used here.',
    'Do not solder.',
    'You must not solder the leads.',
    'Soldering is forbidden in this room.',
    'Use clips instead of solder.',
    'Use the cell rather than a van de Graaff generator.',
    'This works without pins.',
    'Avoid alcohol.',
    'Neither oil nor semolina is needed.',
    'No naked flames, no candles.',
    'Keep water trays away.',
    'Keep the paper away from salt water.',
    'Wipe with water, not with propanol.',
    'The pins, which we do not use, stay in the box.',
    'Unlike the demonstration with semolina in oil, the paper shows numbers.',
    'Would semolina in oil show the same lines?',
    'Why do grains of semolina in oil line up with the field? [1]',
    'Millikan used an oil drop.',
    'Mark the grain of the paper with an arrow.',
    'A pupil says: “We need oil and semolina.”',
    'Look at `castor oil` and [how to solder](https://example.org/oil).',
    'The cells must never be joined in parallel.',
    'Photocopy the template; the printer pins the corner.',
  ])('%s', (text) => {
    expect(withText(text)).toEqual([]);
  });
});

describe('a sentence more that begins with “Never”', () => {
  const dangers = [
    ...Object.values(phrasings).flatMap(({ text }) => (text === undefined ? [] : text.split(/(?<=[.]) /))),
    'Set the power pack to 60 V.',
    'Connect the bars to an ignition coil.',
    'Connect the electrodes to the mains.',
    'Put a grape in a microwave oven.',
    'Fly a kite under a thundercloud.',
    'Use an HT supply, an EHT supply and a button cell.',
    'Use a lithium-ion cell or a car battery.',
    'Connect two cells in parallel.',
    'Say that you are safe in a car or that the point drains the cloud.',
    'Work in groups of five.',
    'Leave hot oil, solder, flames and pins on the bench.',
  ];
  const sheets: Readonly<Record<string, string>> = {
    'a clean sheet': sheetWith({ text: 'MORE' }),
    'a bare sheet': sheetWith({ text: 'MORE', notes: ['Take care.'], supply: 'power-pack 5 V' }),
    'notes of a sheet': sheetWith({ notes: ['Take care.', 'MORE'] }),
  };

  describe.each(Object.entries(sheets))('in %s', (_, sheet) => {
    const before = codesOf(sheet.replace('MORE', 'Read on.'));
    test.each(dangers)('Never: %s', (danger) => {
      const small = danger.charAt(0).toLowerCase() + danger.slice(1);
      const after = codesOf(sheet.replace('MORE', `Never ${small}`));
      expect(after.filter((code) => !before.includes(code))).toEqual([]);
    });
  });
});
