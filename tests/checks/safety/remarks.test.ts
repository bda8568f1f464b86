/** Claims to reword, health of somebody, crowded boards. */
import { describe, expect, test } from 'vitest';
import { codesOf, sheetWith } from './safety.ts';

const found = (text: string): readonly string[] => codesOf(sheetWith({ text }));

describe('claims', () => {
  test.each([
    ['You are safe in a car.', 'claim-car'],
    ['A car is safe in a thunderstorm.', 'claim-car'],
    ['When it thunders stay safe in your car.', 'claim-car'],
    ['The car protects the passengers.', 'claim-car'],
    ['An aeroplane is a safe place.', 'claim-car'],
    ['1. Why? [1]\n\n   ::: answer\n   You are protected inside a car. (1)\n   :::', 'claim-car'],
    ['The point protects the house.', 'claim-point'],
    ['A sharp point drains the cloud.', 'claim-point'],
    ['The lightning conductor discharges the cloud.', 'claim-point'],
    ['Spikes on the roof neutralise the charge of the storm.', 'claim-point'],
  ])('%s', (text, code) => {
    expect(found(text)).toEqual([code]);
  });

  test.each([
    'The field inside a car is much weaker.',
    'You are not safe in a car.',
    'Never say that you are safe in a car.',
    'Do not say that a point protects a building or drains a cloud.',
    'A pupil says: “You are safe in a car.” Explain what is wrong.',
    'Is it true that the point drains the cloud?',
    'A point does not protect a building.',
    'The lightning conductor receives the strike.',
    'The field is strong at the point.',
    'Points on the line drain nothing.',
  ])('but not: %s', (text) => {
    expect(found(text)).toEqual([]);
  });
});

describe('health', () => {
  test.each([
    'Ella has asthma.',
    'Jaime in 12C is diabetic, so he sits at the front.',
    'A student, Priya, has epilepsy; seat her near the door.',
    'Note: Sam P. has a nut allergy.',
    'One pupil in 12B has a pacemaker.',
    'That student in the second group is diabetic.',
  ])('%s', (text) => {
    expect(found(text)).toEqual(['medical-details']);
  });

  test.each([
    'Nobody with a pacemaker comes near.',
    'A pupil who has an allergy tells the teacher.',
    'If a pupil has asthma, open the window.',
    'Ask whether anybody has a nut allergy.',
    'The wheat is allergenic.',
    'Anyone in 12C who is diabetic tells the teacher.',
    'Everyone who is allergic to nickel wears gloves.',
  ])('but not: %s', (text) => {
    expect(found(text)).toEqual([]);
  });
});

describe('groups', () => {
  test.each(['Work in groups of four.', 'Work in groups of 3 to 5.', 'In teams of up to 6.'])(
    '%s',
    (text) => {
      expect(found(text)).toEqual(['group-size']);
    },
  );

  test.each([
    'Work in pairs.',
    'Work in groups of three.',
    'Groups of 3 at most.',
    'Take readings in groups of five readings.',
    'A set of 4 electrodes.',
    'Never work in groups of four.',
  ])('but not: %s', (text) => {
    expect(found(text)).toEqual([]);
  });
});
