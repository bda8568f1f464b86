import { expect, test } from 'vitest';
import { checkReading, cut, read, withBlock } from './sheets.ts';

test('all keys', () => {
  const sheet = read(
    withBlock(`
      ---
      title: "Parallel bars: a map"
      id: 007
      version: 1.10
      date: 2026-03-12
      author: Physics
      school: Elmbridge
      status: reviewed # by hand
      course: A level
      groups: 12
      spares: 2
      minutes: 60 min
      print: Letter
      language: en-US
      reviewed: 2026-03-12
      next-review: 2027-03-12
      risk-assessment: RA 12
      kit: board 1, plain paper 2, ruler
      audience: students
      safety: kept-in "Laboratory notes"
      ---
      # Heading
    `),
  );
  expect(sheet.findings).toEqual([]);
  expect(sheet.front).toMatchObject({
    title: 'Parallel bars: a map',
    id: '007',
    version: '1.10',
    date: '2026-03-12',
    status: 'reviewed',
    groups: 12,
    spares: 2,
    minutes: 60,
    print: 'Letter',
    language: 'en-US',
    nextReview: '2027-03-12',
    riskAssessment: 'RA 12',
    kit: [
      { item: 'board', count: 1 },
      { item: 'plain paper', count: 2 },
      { item: 'ruler', count: 1 },
    ],
    audience: 'pupils',
    safetyKeptIn: 'Laboratory notes',
  });
  expect(cut(sheet, sheet.front.span ?? { from: 0, to: 0 })).toMatch(/^---\n[\s\S]*\n---$/u);
  expect(sheet.tokens[1]?.type).toBe('heading_open');
});

test('slips cost their line', () => {
  checkReading(`
    ---
    titel: x
    ^^^^^ warning front-key \`titel\` is not read. \`title\`?
    => title: x
    status: Draft
            ^^^^^ warning front-value
            => status: draft
    groups: many
            ^^^^ warning front-value a whole number
    date: 12 March
          ^^^^^^^^ warning front-value
    course: [a, b]
    ^^^^^^ warning front-value
    kit: 2 boards
         ^^^^^^^^ warning front-value behind the thing
    safety: somewhere
            ^^^^^^^^^ warning front-value
    author: kept
    print:
    ---
  `);
});

test('what is no YAML, and what is no front matter', () => {
  const codes = (text: string): readonly string[] => read(withBlock(text)).findings.map(({ code }) => code);
  expect(codes('---\ntitle: "x\n---\n')).toContain('front-yaml');
  expect(codes('---\n- a\n---\n')).toEqual(['front-yaml']);
  expect(codes(`---\nkit: ${'['.repeat(3000)}\n---\n`)).toEqual(['front-yaml']);
  expect(codes('---\nkit: *a\n---\n').length).toBeLessThan(3);
  expect(codes('x\n\n---\ntitel: x\n---\n')).toEqual([]);
  expect(codes('---\n\n---\n')).toEqual([]);
});

test('a byte order mark and CRLF', () => {
  const sheet = read('\ufeff---\r\ntitle: Bars\r\ngroups: x\r\n---\r\n```electrodes\r\n```\r\n');
  expect(sheet.front.title).toBe('Bars');
  expect(sheet.findings.map(({ span }) => cut(sheet, span))).toEqual(['x']);
});
