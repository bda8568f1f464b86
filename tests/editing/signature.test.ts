/** How a line goes on: which of its parts is being written. */
import { describe, expect, it, test } from 'vitest';
import { lineForms } from '../../shared/block/line-forms.ts';
import { words, wordsOf } from '../../shared/block/words.ts';
import { signatureAt } from '../../shared/editing/signature.ts';
import { withCursor } from './cursor.ts';

/** The form that is shown for a line, with the active part between ‹ and ›. */
function shown(line: string): string | null {
  const { draft, offset } = withCursor(`
    \`\`\`electrodes bars
    ${line}
    \`\`\`
  `);
  const help = signatureAt(draft.sheet, offset);
  const signature = help?.signatures[help.active];
  if (help === null || signature === undefined) return null;
  const { label, parts } = signature;
  const part = help.part === null ? undefined : parts[help.part];
  if (part === undefined) return label;
  return `${label.slice(0, part.from)}‹${label.slice(part.from, part.to)}›${label.slice(part.to)}`;
}

describe('the part that is being written', () => {
  test.each([
    ['clip ‸', 'clip ‹NAME› R'],
    ['clip N ‸', 'clip NAME ‹R›'],
    ['clip N 0.2 ‸Ω', 'clip NAME ‹R›'],
    ['clip N 0.2 Ω‸', 'clip NAME ‹R›'],
    ['bar ‸', 'bar ‹NAME› W × H PLACE [turned ANGLE] TERMINAL'],
    ['bar N ‸', 'bar NAME ‹W × H› PLACE [turned ANGLE] TERMINAL'],
    ['bar N 10 mm × ‸', 'bar NAME ‹W × H› PLACE [turned ANGLE] TERMINAL'],
    ['bar N 10 mm × 120 mm ‸', 'bar NAME W × H ‹PLACE› [turned ANGLE] TERMINAL'],
    ['bar N 10 mm × 120 mm at (60, ‸', 'bar NAME W × H ‹PLACE› [turned ANGLE] TERMINAL'],
    ['bar N 10 mm × 120 mm at (60, 80) mm ‸', 'bar NAME W × H PLACE [‹turned ANGLE›] TERMINAL'],
    ['bar P 10 mm × 120 mm, 100 mm ‸', 'bar NAME W × H ‹PLACE› [turned ANGLE] TERMINAL'],
    ['bar P 10 mm × 120 mm, 100 mm right of N ‸', 'bar NAME W × H PLACE [‹turned ANGLE›] TERMINAL'],
    ['bar P 10 mm × 120 mm, 100 mm right of N ‸positive', 'bar NAME W × H PLACE [‹turned ANGLE›] TERMINAL'],
    ['bar P 10 mm × 120 mm at centre turned 30° ‸', 'bar NAME W × H PLACE [turned ANGLE] ‹TERMINAL›'],
    ['bar P 10 mm × 120 mm at centre positive ‸', 'bar NAME W × H PLACE [turned ANGLE] TERMINAL'],
    ['bar P positive ‸', 'bar NAME ‹W × H› PLACE [turned ANGLE] TERMINAL'],
    ['bar P 10 mm × 1 mm at centre held at ‸', 'bar NAME W × H PLACE [turned ANGLE] ‹TERMINAL›'],
    [
      'ring R diameter 50 mm, wall ‸',
      'ring NAME diameter D ‹wall T› [opening W facing DIRECTION] PLACE [turned ANGLE] TERMINAL',
    ],
    ['supply 2 ‸', 'supply ‹N cells V› [internal R] [limit I] [CHEMISTRY] [size AA]'],
    ['supply 2 cells 1.5 V ‸', 'supply N cells V [‹internal R›] [limit I] [CHEMISTRY] [size AA]'],
    ['bar N 10 mm × 120 ‸', 'bar NAME ‹W × H› PLACE [turned ANGLE] TERMINAL'],
    ['meter 10 ‸', 'meter ‹R› [resolution V] [range V] [probe tip D] [black lead on NAME]'],
    ['supply cell 1.5 V, internal ‸', 'supply cell V [‹internal R›] [limit I] [CHEMISTRY] [size AA]'],
    ['supply eht 3 kV, limit ‸', 'supply eht V [internal R] [‹limit I›] [ac]'],
    ['meter 10 MΩ, probe tip ‸', 'meter R [resolution V] [range V] [‹probe tip D›] [black lead on NAME]'],
    ['paper 240 mm × 160 mm, 5 kΩ ‸', 'paper W × H [‹R per square›]'],
    ['paper A4 landscape, ‸', 'paper A4 landscape [‹R per square›]'],
    ['probe M at A ‸', 'probe NAME ‹at ROW D›'],
    ['probe M at (60, 80) mm ‸', 'probe NAME at POINT'],
    ['row A from N to P every ‸', 'row NAME from END to END ‹every D›'],
    ['row A from N to P in 12 ‸', 'row NAME from END to END ‹in N steps›'],
    ['row A from N ‸', 'row NAME from END ‹to END› every D'],
    ['equipotentials 0.2 V to 1.4 V ‸', 'equipotentials V to V ‹every V›'],
    ['equipotentials every ‸', 'equipotentials ‹every V›'],
    ['hole disc ‸', 'hole ‹disc diameter D› at POINT'],
    ['draw electrodes, ‸', 'draw ‹PART, PART …› [for AUDIENCE]'],
    ['draw electrodes for ‸', 'draw PART, PART … [‹for AUDIENCE›]'],
    ['strip G (20, 20) (20, 80) mm, width ‸', 'strip NAME (X, Y) (X, Y) (X, Y) … mm ‹width W› TERMINAL'],
  ])('%s', (line, form) => {
    expect(shown(line)).toBe(form);
  });

  it('is none in the first word, in a remark, on other lines and outside blocks', () => {
    for (const line of ['cli‸p N 0.2 Ω', 'clip N 0.2 Ω # the ‸lead', '‸', 'nonsense ‸']) {
      expect(shown(line)).toBe(null);
    }
    const { draft, offset } = withCursor('Text ‸\n\n```electrodes\n```');
    expect(signatureAt(draft.sheet, offset)).toBe(null);
  });
});

test('every word that begins a line has its forms, and forms use words of the table alone', () => {
  const first = new Set(lineForms.map(({ word }) => word));
  expect([...first].sort()).toEqual([...wordsOf('statement', 'shape')].sort());
  const known = new Set(words.map(({ word }) => word));
  const used = lineForms.flatMap(({ parts }) => parts.flatMap((part) => Object.keys(part.words)));
  expect(used.filter((word) => !known.has(word))).toEqual([]);
});
