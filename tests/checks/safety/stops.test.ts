/** What makes a sheet no practical for pupils: stops, each with what governs it, and what is only nearly one. */
import { describe, expect, it, test } from 'vitest';
import { usualStandards } from '../../../shared/checks/rule.ts';
import { usualDepartment } from '../../../shared/sheet/department/department.ts';
import { codesOf, findingsOf, sheetWith } from './safety.ts';

const stopsOf = (text: string): readonly string[] =>
  findingsOf(text)
    .filter(({ severity }) => severity === 'stop')
    .map(({ code }) => code);

describe('supplies', () => {
  // 40 V d.c.: common practice of schools; 25 V a.c.: IEC 60364-4-41; 12 V near a liquid: the same, clause 414, from memory.
  test.each([
    ['power-pack 40 V', []],
    ['power-pack 41 V', ['voltage-touch']],
    ['power-pack 300 V, limit 100 mA', ['voltage-touch']],
    ['power-pack 300 V, limit 2 mA', ['voltage-touch']],
    ['power-pack 25 V, ac', []],
    ['power-pack 26 V, ac', ['voltage-touch']],
    ['30 cells 1.5 V, zinc-carbon', ['voltage-touch']],
    ['eht 3 kV', ['eht-on-paper']],
    ['eht 3 kV, limit 2 mA', ['eht-on-paper']],
    ['eht 20 V', ['eht-on-paper']],
    ['ht 300 V', ['ht-supply']],
    ['cell 3.7 V, lithium-ion', ['cell-lithium-ion']],
    ['6 cells 2 V, lead-acid', ['cell-lead-acid']],
    ['cell 1.5 V, lithium-primary', []],
    ['cell 1.5 V, alkaline, size LR44', ['cell-button']],
    ['cell 3 V, lithium-primary, size CR2032', ['cell-button']],
    ['cell 1.5 V, zinc-carbon, size AA', []],
  ])('%s', (supply, expected) => {
    expect(stopsOf(sheetWith({ supply }))).toEqual(expected);
  });

  test('a potential that is held counts like a supply, and so does the difference of two', () => {
    const held = (a: string, b: string): string =>
      sheetWith({
        block: `disc  A  diameter 10 mm at (110, 20) mm  held at ${a}\ndisc  B  diameter 10 mm at (110, 140) mm  held at ${b}`,
      });
    expect(stopsOf(held('30 V', '10 V'))).toEqual([]);
    expect(stopsOf(held('50 V', '10 V'))).toEqual(['voltage-touch']);
    expect(stopsOf(held('30 V', '-30 V'))).toEqual(['voltage-touch']);
  });

  test('near a liquid less is allowed', () => {
    const wet = (supply: string): readonly string[] =>
      stopsOf(sheetWith({ supply, text: 'Fill the water tray to a depth of 5 mm.' }));
    expect(wet('power-pack 12 V')).toEqual([]);
    expect(wet('power-pack 13 V')).toEqual(['voltage-liquid']);
    expect(wet('power-pack 12 V, ac')).toEqual([]);
    expect(wet('power-pack 13 V, ac')).toEqual(['voltage-liquid']);
    expect(
      stopsOf(sheetWith({ supply: 'power-pack 13 V', notes: ['Keep water away from the supply.'] })),
    ).toEqual([]);
  });

  test('says what governs, and that a limit which is set is none', () => {
    const [found] = findingsOf(sheetWith({ supply: 'power-pack 300 V, limit 100 mA' }));
    expect(found?.message).toBe(
      '300\u00a0V d.c. on bare electrodes: above 40\u00a0V d.c. this is not a practical for pupils.',
    );
    expect(found?.hints.join(' ')).toMatch(
      /1\.5 V to 6 V.*limit of 40 V.*IEC 60364-4-41.*A limit of 100\u00a0mA is none.*5 mA.*2 mA d\.c\./,
    );
  });

  test('a department may set a limit of its own', () => {
    const limits = {
      ...usualDepartment.limits,
      'touch-dc': { value: 20, unit: 'V', source: 'school rule 4', looser: false },
    } as const;
    const department = { ...usualDepartment, limits };
    const [found] = findingsOf(sheetWith({ supply: 'power-pack 24 V' }), { ...usualStandards, department });
    expect(found).toMatchObject({ code: 'voltage-touch', severity: 'stop' });
    expect(found?.hints.join(' ')).toContain('The limit of 20 V: school rule 4.');
  });

  test('one setup told once, though others are like it', () => {
    const text = `${sheetWith({ supply: 'eht 3 kV' })}\n\n\`\`\`electrodes other like bars\nreverse supply\n\`\`\`\n`;
    expect(stopsOf(text)).toEqual(['eht-on-paper']);
  });
});

describe('words', () => {
  test.each([
    ['Set the power pack to 60 V.', 'voltage-touch'],
    ['Raise the voltage to 100 V.', 'voltage-touch'],
    ['For the second run the supply is set to 60 V.', 'voltage-touch'],
    ['Turn the supply up to 30 V a.c. and read the meter.', 'voltage-touch'],
    ['Connect the bars to an ignition coil.', 'high-voltage-source'],
    ['Use an induction coil as the source.', 'high-voltage-source'],
    ['We built a supply from a microwave oven transformer, used here with the discs.', 'high-voltage-source'],
    ['Connect the electrodes to the mains.', 'mains-electrodes'],
    ['Connect the bars to a 230 V wall socket through a dimmer.', 'mains-electrodes'],
    ['Apply mains voltage across the plates.', 'mains-electrodes'],
    ['Wire the two discs across the 230 V supply.', 'mains-electrodes'],
    ['Put a grape in a microwave oven and watch the plasma.', 'microwave-oven'],
    ['The teacher shows sparks from foil in the microwave.', 'microwave-oven'],
    ['Fly a kite under a thundercloud.', 'storm-outdoors'],
    ['During a thunderstorm, go outside and measure the field.', 'storm-outdoors'],
    ['Use an HT supply of 250 V.', 'ht-supply'],
    ['Use a button cell.', 'cell-button'],
    ['Use the CR2032 from the box.', 'cell-button'],
    ['Use a lithium-ion cell from an old phone.', 'cell-lithium-ion'],
    ['Connect the car battery.', 'cell-lead-acid'],
    ['Connect the EHT supply to the conducting paper. Its limit is 2 mA.', 'eht-on-paper'],
    ['The teacher uses an EHT supply.', 'eht-limit'],
    ['The teacher uses an EHT supply. Its current is limited to 20 mA.', 'eht-limit'],
    ['Use a high-voltage supply.', 'eht-limit'],
  ])('%s', (text, code) => {
    expect(stopsOf(sheetWith({ text }))).toEqual([code]);
  });

  test.each([
    'Set the power pack to 6 V.',
    'Set the supply to 4.5 V, then to 3 V.',
    'Only the cell of the kit is used here, never a mains supply.',
    'Switch off at the mains before you touch a casualty.',
    'Plug the power pack into a mains socket.',
    'The power pack is connected to the mains by its cable.',
    'Why does a microwave oven have a metal mesh in its door?',
    'The mesh in the door of a microwave oven screens like the ring.',
    'Use the microwave transmitter of 2.8 cm wavelength.',
    'In a thunderstorm the field near the ground reaches 10 kV/m.',
    'Why is the field strong at the tip of a lightning conductor? [2]',
    'An ignition coil gives some 20 kV.',
    'The dome of a van de Graaff generator is a hollow conductor. Where is its charge? [1]',
    'Explain how an induction coil would change the picture.',
    'Instead of a lithium-ion cell take zinc-carbon.',
    'Do not use button cells.',
    'Replace lithium-ion cells by zinc-carbon cells.',
    'The teacher uses an EHT supply. Its current is limited to 2 mA.',
    'The teacher uses an EHT supply that cannot give more than 5 mA.',
    'EHT supplies must never be connected to the paper.',
    'Set the range of the meter to 20 V.',
    'A pupil says: “Connect the electrodes to the mains.” What is wrong?',
    'See `EHT supply` and [the mains](https://example.org/ht-supply).',
  ])('but not: %s', (text) => {
    expect(stopsOf(sheetWith({ text }))).toEqual([]);
  });
});

test('the greatest input that the text states for meter or probe', () => {
  const rated = (text: string, supply: string): readonly string[] =>
    codesOf(sheetWith({ text, supply })).filter((code) => code === 'meter-rating');
  expect(rated('The probe is rated at 10 V.', 'power-pack 12 V')).toEqual(['meter-rating']);
  expect(rated('The maximum input of the meter is 10 V.', 'power-pack 12 V')).toEqual(['meter-rating']);
  expect(rated('The voltmeter has a maximum rating of 200 mV.', 'cell 1.5 V, zinc-carbon')).toEqual([
    'meter-rating',
  ]);
  expect(rated('The probe is rated at 600 V.', 'power-pack 12 V')).toEqual([]);
  expect(rated('The lamp is rated at 2.5 V.', 'power-pack 12 V')).toEqual([]);
  // A range is no rating.
  expect(rated('Use the 2 V range of the meter.', 'power-pack 12 V')).toEqual([]);
});

it('stays where the notes are kept elsewhere', () => {
  expect(stopsOf(sheetWith({ front: 'safety: kept-in "Laboratory notes"', supply: 'eht 3 kV' }))).toEqual([
    'eht-on-paper',
  ]);
});
