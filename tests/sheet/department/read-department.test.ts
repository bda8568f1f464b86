/** The file of a department: what is read, and what is said about it. */
import { describe, expect, it, test } from 'vitest';
import { usualDepartment } from '../../../shared/sheet/department/department.ts';
import { readDepartment } from '../../../shared/sheet/department/read-department.ts';
import { check, dedent } from '../../check.ts';

const read = (text: string) => readDepartment({ name: 'department.yaml', text: dedent(text) });
const checkFile = (marked: string): void => check(marked, (text) => read(text).findings);

describe('what a department decides', () => {
  it('is all as usual without a word', () => {
    for (const text of ['', '# nothing yet\n', 'limits:\nstyle:\n', 'style: {}'])
      expect(read(text)).toMatchObject({ department: usualDepartment, findings: [] });
  });

  it('severities, limits, house style, review', () => {
    const { department, findings } = read(`
      severities:
        percent-space: warning
        unit-case: warning   # an error is no stop
      limits:
        touch-dc:
          limit: 0.03 kV
          source: Handbook of Elmbridge School, 2026, page 4
        heat: { limit: 50 W/m², source: the same }
      style:
        headings: brackets
        percent: joined
        direct-current: d.c.
        four-digits: grouped
        strength: N/C
        language: en-US
      review: 2 years
    `);
    expect(findings).toEqual([]);
    expect([...department.severities]).toEqual([
      ['percent-space', 'warning'],
      ['unit-case', 'warning'],
    ]);
    expect(department.limits['touch-dc']).toEqual({
      value: 30,
      unit: 'V',
      source: 'Handbook of Elmbridge School, 2026, page 4',
      looser: false,
    });
    expect(department.limits.heat).toMatchObject({ value: 5, unit: 'mW/cm²' });
    expect(department.limits['touch-ac']).toEqual(usualDepartment.limits['touch-ac']);
    expect(department.style).toEqual({
      headings: 'brackets',
      percent: 'joined',
      'direct-current': 'd.c.',
      'four-digits': 'grouped',
      strength: 'N/C',
      language: 'en-US',
    });
    expect(department.reviewMonths).toBe(24);
  });

  it('reads a file with a byte order mark and line ends of another system', () => {
    const text = '\ufeffseverities:\r\n  unit-spce: note\r\nreview: 6\r\n';
    const { department, findings } = readDepartment({ name: 'department.yaml', text });
    expect(department.reviewMonths).toBe(6);
    expect(findings.map(({ span }) => text.slice(span.from, span.to))).toEqual(['unit-spce']);
  });
});

test('keys that are not known', () => {
  checkFile(`
    severites:
    ^^^^^^^^^ warning department-key \`severites\` is not read. \`severities\`?
    => severities:
    colour: red
    ^^^^^^ warning department-key \`colour\` is not read.
    severities:
      Unit_Space: note
      ^^^^^^^^^^ warning department-key
      =>   unit-space: note
    limits:
      hept:
      ^^^^ warning department-key
      =>   heat:
        limit: 30 V
      touch-ac:
        limits: 20 V
        ^^^^^^ warning department-key
        =>     limit: 20 V
        source: x
  `);
});

test('values that cannot be taken', () => {
  checkFile(`
    severities:
      unit-space: warn
                  ^^^^ error department-value \`unit-space\` is error, warning or note.
      unit-hyphen: stop
                   ^^^^ error department-value
      angle-space: [note]
      ^^^^^^^^^^^ error department-value is one value
    limits:
      touch-dc: 30 V
                ^^^^ error department-value Below \`touch-dc\` stand keys: \`limit: 40 V\` and
      touch-ac:
        limit: 20
               ^^ error department-value \`touch-ac\` is a number in V: 25 V.
               =>     limit: 20 V
        source: x
      liquid-dc:
        limit: 12 mA
               ^^^^^ error department-value
        source: x
      liquid-ac:
        limit: 0 V
               ^^^ error department-value
        source: x
    style:
      headings: bracket
                ^^^^^^^ error department-value \`headings\` is solidus or brackets.
                =>   headings: brackets
      percent: yes
               ^^^ error department-value
    review: now and then
            ^^^^^^^^^^^^ error department-value
  `);
  checkFile(`
    style: brackets
           ^^^^^^^^ error department-value Below \`style\` stand keys
    review: 0 months
            ^^^^^^^^ error department-value
  `);
  checkFile(`
    - a list
    ^^^^^^^^ error department-yaml A department’s file is a list of keys and values
  `);
  checkFile(`
    review: 12 months
    review: 6 months
    ^ error department-yaml YAML: Map keys must be unique.
  `);
});

test('severities that are not the department’s to set', () => {
  checkFile(`
    severities:
      insert-unknown: note
      ^^^^^^^^^^^^^^ error severity-fixed \`insert-unknown\` says that something cannot be read or solved: it keeps its severity.
      limit-looser: note
      ^^^^^^^^^^^^ error severity-fixed
      row-uneven: error
      potential-unit: note
  `);
});

describe('a limit', () => {
  const limitsOf = (text: string) => read(text).department.limits;

  it('that is looser than usual has a source, and is told', () => {
    const marked = `
      limits:
        touch-dc:
          limit: 60 V
                 ^^^^ note limit-looser 60 V are more than is usual, 40 V (common practice
          source: IEC 60364-4-41
    `;
    checkFile(marked);
    const text = 'limits: { touch-dc: { limit: 60 V, source: IEC 60364-4-41 } }';
    expect(limitsOf(text)['touch-dc']).toEqual({
      value: 60,
      unit: 'V',
      source: 'IEC 60364-4-41',
      looser: true,
    });
  });

  it('without a source is an error; more than usual is then not allowed, less is', () => {
    checkFile(`
      limits:
        touch-dc:
        ^^^^^^^^ error limit-source Until then 40 V stay.
          limit: 60 V
        touch-ac:
        ^^^^^^^^ error limit-source
          limit: 12 V
          source:
    `);
    const limits = limitsOf('limits: { touch-dc: { limit: 60 V }, touch-ac: { limit: 12 V } }');
    expect(limits['touch-dc']).toEqual(usualDepartment.limits['touch-dc']);
    expect(limits['touch-ac']).toMatchObject({ value: 12, looser: false });
  });

  it('ends where no department’s word goes', () => {
    checkFile(`
      limits:
        touch-dc:
          limit: 300 V
                 ^^^^^ error department-value \`touch-dc\` goes up to 120 V: IEC 61140
          source: an old book
    `);
    const text = 'limits: { limited-current: { limit: 10 mA, source: an old book } }';
    expect(limitsOf(text)['limited-current'].value).toBe(5);
  });
});
