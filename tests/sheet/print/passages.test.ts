/** Who gets which text. Passages fail closed. */
import { describe, expect, it } from 'vitest';
import type { FindingCode } from '../../../shared/findings/catalogue.ts';
import type { Severity } from '../../../shared/findings/entry.ts';
import { readDepartment } from '../../../shared/sheet/department/read-department.ts';
import { printSheet } from '../../../shared/sheet/print/print-sheet.ts';
import { readersOf } from '../../../shared/sheet/print/withheld.ts';
import { bodyOf, inputOf, printed, textOf } from './sheets.ts';

const block = '```electrodes\npaper 100 mm × 100 mm\ndraw nothing\n```\n\n';
const seenBy = (text: string) =>
  Object.fromEntries(
    (['pupils', 'teachers', 'technicians'] as const).map((audience) => [
      audience,
      textOf(printed(block + text, audience)).includes('WORDS'),
    ]),
  );

describe('readers', () => {
  it.each([
    ['pupils', [true, false, false]],
    ['students', [true, false, false]],
    ['teachers', [false, true, false]],
    ['technicians', [false, false, true]],
    ['safety', [true, true, true]],
    ['answer', [false, true, false]],
    ['hint', [true, true, false]],
    ['support', [false, true, false]],
    ['teechers', [false, true, false]],
  ])('%s', (kind, [pupils, teachers, technicians]) => {
    expect(seenBy(`::: ${kind}\nWORDS\n:::\n`)).toEqual({ pupils, teachers, technicians });
  });

  it('nested passages reach readers of all', () => {
    expect(seenBy('::: safety\n::: teachers\nWORDS\n:::\n:::\n')).toEqual({
      pupils: false,
      teachers: true,
      technicians: false,
    });
    expect(seenBy('::: technicians\n::: answer\nWORDS\n:::\n:::\n')).toEqual({
      pupils: false,
      teachers: false,
      technicians: false,
    });
  });

  it('an unclosed passage is hidden from pupils to its end', () => {
    expect(seenBy('::: pupils\nOther\n\n# Head\n\nWORDS\n')).toEqual({
      pupils: false,
      teachers: true,
      technicians: false,
    });
    expect(seenBy('1. item\n\n   ::: pupils\n   WORDS\n\n:::\n')).toMatchObject({ pupils: false });
  });

  it('comments reach nobody, in text, lists and blocks', () => {
    const text = `${block}<!-- SECRET -->\n\nA <!-- SECRET --> b\n\n- c <!-- SECRET\nSECRET --> d\n\n::: pupils\n<!-- SECRET -->\n:::\n`;
    for (const audience of ['pupils', 'teachers', 'technicians'] as const) {
      expect(printed(text, audience)).not.toContain('SECRET');
    }
  });

  it('remarks and the text of a block are not printed', () => {
    const document = printed('```electrodes\npaper 100 mm × 100 mm # SECRET remark\n```\n', 'teachers');
    expect(document).not.toContain('SECRET');
    expect(document).not.toContain('100 mm × 100 mm');
  });
});

describe('room to answer', () => {
  const lines = (text: string) =>
    bodyOf(printed(block + text, 'pupils'))
      .match(/<div class="lines">(<div><\/div>)+<\/div>/)?.[0]
      .match(/<div><\/div>/g)?.length;
  it('two ruled lines, or as many as are asked for', () => {
    expect(lines('::: answer\nx\n:::\n')).toBe(2);
    expect(lines('::: answer 4 lines\nx\n:::\n')).toBe(4);
  });
  it('or a box', () => {
    expect(bodyOf(printed(`${block}::: answer box 60 mm\nx\n:::\n`, 'pupils'))).toContain(
      '<div class="space" style="height:60mm"></div>',
    );
  });
  it('none for technicians', () => {
    expect(bodyOf(printed(`${block}::: answer\nx\n:::\n`, 'technicians'))).not.toContain('class="lines"');
  });
});

describe('tiers', () => {
  const text = `${block}COMMON\n\n::: support\nEASY\n:::\n\n::: stretch\nHARD\n:::\n`;
  it('each copy has its own text and that of all', () => {
    expect(textOf(printed(text, 'pupils', 'support'))).toBe('COMMON ● EASY');
    expect(textOf(printed(text, 'pupils', 'stretch'))).toBe('COMMON ▲ HARD');
    expect(textOf(printed(text, 'pupils'))).toBe('COMMON');
    expect(printSheet(inputOf(text), 'pupils')?.tiers).toEqual(['support', 'stretch']);
  });
  it('never in words', () => {
    const whole = printed(text, 'pupils', 'support').replace(/<style>[\s\S]*<\/style>/, '');
    expect(whole).not.toMatch(/support|stretch/i);
    expect(whole).toContain('Pupils ●');
  });
});

describe('hints', () => {
  it('stand on a page of their own for pupils, in place for teachers', () => {
    const text = `${block}First\n\n::: hint\nLOOK\n:::\n\nLast\n`;
    expect(textOf(printed(text, 'pupils'))).toBe('First Hint 1 is on the last page. Last Hints LOOK');
    expect(textOf(printed(text, 'teachers'))).toBe('First Hint LOOK Last');
  });
  it('an answer within a hint is room to write, not its text', () => {
    expect(textOf(printed(`${block}::: hint\nA\n::: answer\nSECRET\n:::\n:::\n`, 'pupils'))).not.toContain(
      'SECRET',
    );
  });
});

describe('who gets a print', () => {
  const { sheet } = inputOf(block);
  const of = (severity: Severity, code: FindingCode = 'insert-form') => ({
    code,
    severity,
    span: { from: 0, to: 3 },
    message: 'Something is wrong.',
    hints: ['Mend it.'],
    fixes: [],
    related: [],
  });
  it('with errors teachers alone, with a stop no pupils', () => {
    expect(readersOf(sheet, [])).toEqual(['pupils', 'teachers', 'technicians']);
    expect(readersOf(sheet, [of('warning')])).toEqual(['pupils', 'teachers', 'technicians']);
    expect(readersOf(sheet, [of('stop')])).toEqual(['teachers', 'technicians']);
    expect(readersOf(sheet, [of('stop'), of('error')])).toEqual(['teachers']);
  });
  it('a slip in a unit holds nothing back, and staff read of it', () => {
    expect(readersOf(sheet, [of('error', 'unit-case')])).toEqual(['pupils', 'teachers', 'technicians']);
    expect(readersOf(sheet, [of('error', 'unit-case'), of('error')])).toEqual(['teachers']);
    expect(readersOf(sheet, [of('error', 'unit-case'), of('stop')])).toEqual(['teachers', 'technicians']);
    const input = inputOf(block, undefined, [of('error', 'unit-case')]);
    expect(textOf(printSheet(input, 'pupils')?.html ?? '')).not.toContain('Something is wrong');
    expect(textOf(printSheet(input, 'technicians')?.html ?? '')).toContain(
      'Error, line 1. Something is wrong.',
    );
  });
  it('a sheet for one reader', () => {
    const only = inputOf(`---\naudience: technicians\n---\n${block}`);
    expect(printSheet(only, 'pupils')).toBe(null);
    expect(printSheet(only, 'technicians')?.html).toContain('Technicians');
  });
  it('a sheet for pupils with a stop is shown to those who can mend it', () => {
    const only = inputOf(`---\naudience: pupils\n---\n${block}`);
    expect(readersOf(only.sheet, [of('stop')])).toEqual(['teachers', 'technicians']);
    expect(readersOf(only.sheet, [])).toEqual(['pupils']);
  });
  it('findings stand on top with their lines, for those who get the sheet', () => {
    const input = inputOf(block, undefined, [of('stop')]);
    expect(textOf(printSheet(input, 'technicians')?.html ?? '')).toMatch(
      /^To mend before .* Not a pupil practical, line 1\. Something is wrong\. Mend it\. This list is not complete/,
    );
    expect(printSheet(input, 'pupils')).toBe(null);
    expect(bodyOf(printed(block, 'teachers'))).not.toContain('findings');
  });
  it('limits that allow more than is usual stand on the prints for staff', () => {
    const text =
      'limits: { touch-dc: { limit: 60 V, source: IEC 60364-4-41 }, heat: { limit: 1 mW/cm², source: x } }';
    const { department } = readDepartment({ name: 'department.yaml', text });
    const input = { ...inputOf(block), department };
    for (const reader of ['teachers', 'technicians'] as const)
      expect(textOf(printSheet(input, reader)?.html ?? '')).toMatch(
        /^Limits of this department that allow more than is usual Direct voltage .* Here 60\u00a0V, by IEC 60364-4-41; usual are 40\u00a0V\.(?!.*usual are)/,
      );
    expect(printSheet(input, 'pupils')?.html).toBe(printed(block, 'pupils'));
  });
});
