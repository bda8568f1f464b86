import { describe, expect, test } from 'vitest';
import { parseBlock } from '../../shared/block/parse.ts';
import { formsOf, reservedNames, words, wordsOf } from '../../shared/block/words.ts';
import { excerptOf } from '../excerpts.ts';

const findingsOf = (line: string) => parseBlock(excerptOf(line)).findings;

/** Lines that a part of a line may be tried in. */
const frames = [
  '@',
  'supply cell 1.5 V, @',
  'meter 10 MΩ, @',
  'paper 240 mm × 160 mm, @',
  'paper 240 mm × 160 mm, @, 6 kΩ per square along y',
  'bar N @ at centre',
  'bar N 10 mm × 120 mm @',
  'bar N 10 mm × 120 mm at centre @',
  'disc D @ at centre',
  'ring R wall 4 mm, @ at centre',
  'ring R diameter 50 mm, @ at centre',
  'ring R diameter 50 mm, wall 4 mm, @ at centre',
  'spike S base 20 mm, length 40 mm, tip at centre, @',
  'spike S base 20 mm, length 40 mm, @ pointing left',
  'spike S base 20 mm, @, tip at centre pointing left',
  'spike S length 40 mm, @, tip at centre pointing left',
  'spike S length 40 mm, base 20 mm, @',
  'spike S base 20 mm, length 40 mm, @, tip at centre pointing left',
  'strip G (20, 20) (20, 80) mm, @',
  'row A @ to P every 10 mm',
  'row A from N @ every 10 mm',
  'row A from N to P @',
  'draw electrodes @',
];

describe('every word of the table', () => {
  test.each(words.map((entry) => [`${entry.role} ${entry.word}`, entry] as const))('%s', (_, entry) => {
    expect(entry.help).not.toMatch(/[.]$/u);
    if (entry.role === 'head') return;
    const fitting = frames.filter((frame) => {
      const made = findingsOf(frame.replace('@', entry.example));
      return made.every((finding) => finding.severity === 'note');
    });
    expect(fitting, `${entry.example} fits no line`).not.toEqual([]);
    expect(entry.example.toLowerCase()).toContain(entry.word.toLowerCase());
  });
});

test('each spelling of a word is read like the word itself', () => {
  let tried = 0;
  for (const { word, role, spellings, example } of words) {
    if (role === 'head') continue;
    for (const spelling of [word.toUpperCase(), ...spellings]) {
      const at = frames.find((frame) =>
        findingsOf(frame.replace('@', example)).every((f) => f.severity === 'note'),
      );
      const line = (at ?? '@').replace('@', example).replace(word, spelling);
      const errors = findingsOf(line).filter((finding) => finding.severity === 'error');
      expect(errors, line).toEqual([]);
      tried++;
    }
  }
  expect(tried).toBeGreaterThan(150);
});

test('no spelling is the word of another in the same role', () => {
  for (const { word, role, spellings } of words) {
    const others = words
      .filter((entry) => entry.role === role && entry.word !== word)
      .map((entry) => entry.word);
    for (const spelling of spellings) expect(others).not.toContain(spelling);
  }
});

test('forms are lower case, the longest first', () => {
  expect(formsOf('right of')).toEqual([
    ['to', 'the', 'right', 'of'],
    ['right', 'of'],
  ]);
  expect(formsOf('A4')).toEqual([['a4']]);
});

test('words by role, once each', () => {
  expect(wordsOf('audience')).toEqual(['pupils', 'teachers', 'technicians']);
  expect(reservedNames).toContain('V0');
});
