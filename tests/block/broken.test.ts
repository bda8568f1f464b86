import { expect, test } from 'vitest';
import { blockOf, plainStatements } from './blocks.ts';

test('a wrong line costs itself, and keeps its word and name in sight', () => {
  const block = blockOf(`
    supply cell 1,5 V
    bar N 10 mm × 120 at centre negative
    baar P 10 mm × 120 mm at centre positive
    change N postive
    disc D diameter 10 mm at centre floating
  `);
  expect(plainStatements(block.statements)).toMatchObject([
    { kind: 'broken', word: 'supply' },
    { kind: 'broken', word: 'bar', name: 'N' },
    { kind: 'broken', name: 'P' },
    { kind: 'broken', word: 'change', name: 'N' },
    { kind: 'shape', shape: 'disc' },
  ]);
});

test('warnings and notes leave the line standing', () => {
  const block = blockOf(`
    meter 10 mΩ
    supply 2 cells 3 V
    paper 240 mm × 160 mm, 5 kΩ
    prong S 80 mm × 10 mm on P pointing left
    copper 0.1 Mm
  `);
  expect(block.findings).toHaveLength(5);
  expect(block.statements.map((statement) => statement.kind)).not.toContain('broken');
});

test('spans lie where the words stand in the file', () => {
  const block = blockOf('# 𝔼 first\r\n\tbar 𝔑  10 mm × 120 mm\tat (60, 80) mm held at 1 V  # end');
  const text = block.excerpt.lines.map((line) => line.text).join('\r\n');
  const slice = (span: { from: number; to: number } | undefined) => text.slice(span?.from, span?.to);
  const [bar] = block.statements;
  expect(slice(bar?.span)).toBe('bar 𝔑  10 mm × 120 mm\tat (60, 80) mm held at 1 V');
  if (bar?.kind !== 'shape' || bar.shape !== 'bar') throw new Error('not a bar');
  expect(slice(bar.name.span)).toBe('𝔑');
  expect(slice(bar.size.height.span)).toBe('120 mm');
  expect(slice(bar.place.span)).toBe('at (60, 80) mm');
  expect(slice(bar.terminal?.span)).toBe('held at 1 V');
});
