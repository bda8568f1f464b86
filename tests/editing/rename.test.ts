/** Names are renamed wherever they stand, and nowhere else. */
import { describe, expect, it, test } from 'vitest';
import { definitionsOf, occurrenceAt, occurrencesOf, sameThing } from '../../shared/editing/occurrences.ts';
import { renameAt } from '../../shared/editing/rename.ts';
import { edited, twoSetups, withCursor } from './cursor.ts';

/** The lines that a renaming changes; or why it does not. */
function renamed(marked: string, to: string): string {
  const { text, draft, offset } = withCursor(marked);
  const renaming = renameAt(draft, offset, to);
  if (renaming === null) return 'nothing';
  if ('refusal' in renaming) return renaming.refusal;
  const before = text.split('\n');
  return edited(text, renaming.edits)
    .split('\n')
    .filter((line, i) => line !== before[i])
    .join('\n');
}
const at = (before: string): string => twoSetups.replace(before, `${before}‸`);

describe('renaming', () => {
  test('an electrode, across blocks and inserts', () => {
    expect(renamed(at('bar     P'), 'Right')).toBe(
      [
        'bar     Right  10 mm × 120 mm, 100 mm right of N            positive',
        'row     A  from N to Right every 10 mm',
        'change  N  joined to Right',
        'At M: ?{bars.M}, along A: ?{p.d. bars.M to bars.Right}, ?{bars.current}.',
      ].join('\n'),
    );
  });

  test('from a place that only speaks of it', () => {
    expect(renamed(at('change  N'), 'W')).toBe(
      [
        'meter   10 MΩ, resolution 0.01 V, black lead on W',
        'bar     W  10 mm × 120 mm at (60, 80) mm                negative',
        'bar     P  10 mm × 120 mm, 100 mm right of W            positive',
        'row     A  from W to P every 10 mm',
        'change  W  joined to P',
      ].join('\n'),
    );
  });

  test('a probe, also where a variation moves it', () => {
    expect(renamed(at('?{bars.M'), 'C')).toBe(
      [
        'probe   C  at (115, 80) mm',
        'move    C  at (100, 80) mm',
        'At M: ?{bars.C}, along A: ?{p.d. bars.C to bars.P}, ?{bars.current}.',
      ].join('\n'),
    );
  });

  test('a row', () => {
    expect(renamed(at('row     A'), 'L')).toBe(
      ['row     L  from N to P every 10 mm', 'probe   H  at L 20 mm', '?{readings bars.L, swapped.L}'].join(
        '\n',
      ),
    );
  });

  test('a setup', () => {
    expect(renamed(at('electrodes bars'), 'straight')).toBe(
      [
        '```electrodes straight',
        '```electrodes swapped like straight',
        'At M: ?{straight.M}, along A: ?{p.d. straight.M to straight.P}, ?{straight.current}.',
        '?{readings straight.A, swapped.A}',
      ].join('\n'),
    );
  });

  it('refuses what would break the sheet', () => {
    expect(renamed(at('bar     P'), '1')).toBe('A name is a letter, then letters, digits and hyphens.');
    expect(renamed(at('bar     P'), 'N')).toBe('bars already has N.');
    expect(renamed(at('bar     P'), 'current')).toBe('Inserts mean something else by current.');
    expect(renamed(at('electrodes bars'), 'swapped')).toBe('There is already a setup called swapped.');
    expect(renamed(at('electrodes bars'), 'like')).toBe('A setup cannot be called like.');
  });

  it('finds nothing in prose and in words of the language', () => {
    expect(renamed(at('\nAt '), 'X')).toBe('nothing');
    expect(renamed(at('pap'), 'X')).toBe('nothing');
  });
});

describe('a thing that a variation makes anew', () => {
  const varied = twoSetups
    .replace('change  N  joined to P', 'without P\ndisc    P  diameter 20 mm at (180, 80) mm positive')
    .replace('move    M  at (100, 80) mm', 'copper  0.1 mm');

  it('keeps its name with the first one, of which the inherited row speaks', () => {
    expect(renamed(varied.replace('bar     P', 'bar     P‸'), 'K')).toBe(
      [
        'bar     K  10 mm × 120 mm, 100 mm right of N            positive',
        'row     A  from N to K every 10 mm',
        'without K',
        'disc    K  diameter 20 mm at (180, 80) mm positive',
        'At M: ?{bars.M}, along A: ?{p.d. bars.M to bars.K}, ?{bars.current}.',
      ].join('\n'),
    );
  });

  test.each([
    ['row     A  from N to P', 'bar     P'],
    ['without P', 'bar     P'],
    ['disc    P', 'disc    P'],
    ['bars.M to bars.P', 'bar     P'],
  ])('%s leads to %s', (place, line) => {
    const { text, draft, offset } = withCursor(varied.replace(place, `${place}‸`));
    const all = occurrencesOf(draft);
    const found = occurrenceAt(all, offset);
    const definitions = found === null ? [] : definitionsOf(all, found);
    expect(definitions.map(({ span }) => text.slice(span.from - 8, span.to))).toEqual([line]);
  });
});

it('does not take a broken move for the line that gives the name', () => {
  const broken = twoSetups.replace('at (100, 80) mm\n```', 'at (100, 8\n```');
  expect(renamed(broken.replace('probe   M', 'probe   M‸'), 'C').split('\n').length).toBe(3);
});

test('names of two blocks that are not like each other are two things', () => {
  const other = twoSetups.replace('swapped like bars', 'other');
  const { draft, offset } = withCursor(other.replace('bar     N', 'bar     N‸'));
  const all = occurrencesOf(draft);
  const found = occurrenceAt(all, offset);
  const same = all.filter(({ thing }) => found !== null && sameThing(thing, found.thing));
  const change = draft.sheet.source.text.indexOf('change');
  expect(same.length).toBe(4);
  expect(same.every(({ span }) => span.from < change)).toBe(true);
});

describe('names in the running text', () => {
  /** What a renaming to `Q` would change in the text, between ‹ and ›. */
  function guessed(setup: string, prose: string): string {
    const { text, draft, offset } = withCursor(`\`\`\`electrodes bars\n${setup}\n\`\`\`\n\n${prose}\n`);
    const renaming = renameAt(draft, offset, 'Q');
    if (renaming === null || 'refusal' in renaming) throw new Error('not renamed');
    const marked = renaming.prose.map(({ span }) => ({ span, text: `‹${text.slice(span.from, span.to)}›` }));
    return edited(text, marked)
      .slice(text.length - prose.length - 1)
      .trim();
  }
  const M = 'probe M‸ at (60, 80) mm\nprobe K at (70, 80) mm';
  const N = 'bar N‸ 10 mm × 120 mm at (60, 80) mm negative\nprobe K at (70, 80) mm';

  test.each([
    [M, 'Move probe M to M.', 'Move probe ‹M› to M.'],
    [M, 'Probes K, *M* and L.', 'Probes K, *‹M›* and L.'],
    [M, 'Read probe **M**, then bar M and row M.', 'Read probe **‹M›**, then bar M and row M.'],
    [M, 'The probe\nM reads more.', 'The probe\n‹M› reads more.'],
    [
      M,
      '`probe M` is a line; ?{M} and !{M of V0} are inserts.',
      '`probe M` is a line; ?{M} and !{M of V0} are inserts.',
    ],
    [
      M,
      'Probes M to K, probe M2, probe-M, a subprobe M.',
      'Probes ‹M› to K, probe M2, probe-M, a subprobe M.',
    ],
    [
      N,
      'Electrode N, bar N, the bars N and P; the ring N.',
      'Electrode ‹N›, bar ‹N›, the bars ‹N› and P; the ring ‹N›.',
    ],
    [
      N,
      'N is north, probe N is none, and boxes P, N too.',
      'N is north, probe N is none, and boxes P, ‹N› too.',
    ],
  ])('%s: %s', (setup, prose, expected) => {
    expect(guessed(setup, prose)).toBe(expected);
  });

  it('are left alone where another setup gives the same name, and for a setup', () => {
    const twice = 'probe M‸ at (60, 80) mm\n```\n\n```electrodes other\nprobe M at (70, 80) mm';
    expect(guessed(twice, 'Move probe M.')).toContain('Move probe M.');
    const { draft, offset } = withCursor('```electrodes bars‸\n```\n\nThe electrode bars.\n');
    expect(renameAt(draft, offset, 'Q')).toMatchObject({ prose: [] });
  });

  it('are those of a setup that is like it, too', () => {
    const like = 'probe M‸ at (60, 80) mm\n```\n\n```electrodes other like bars\ncopper 0.1 mm';
    expect(guessed(like, 'Move probe M.')).toContain('Move probe ‹M›.');
  });
});
