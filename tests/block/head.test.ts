import { describe, expect, test } from 'vitest';
import { blockOf } from './blocks.ts';

const head = (text: string) => {
  const block = blockOf('', text);
  const { name, like } = block.head;
  return [name?.text ?? null, like?.text ?? null, ...block.findings.map((finding) => finding.code)];
};

describe('the opening line', () => {
  test.each([
    ['', [null, null]],
    [' bars', ['bars', null]],
    [' connected like floating', ['connected', 'floating']],
    [' like floating', [null, 'floating']],
    [' Fältet LIKE floating ', ['Fältet', 'floating']],
    [' like', [null, null, 'name-missing']],
    [' bars like', ['bars', null, 'name-missing']],
    [' setup', ['setup', null, 'name-reserved']],
    [' setup like bars', ['setup', 'bars', 'name-reserved']],
    [' bars lik other', ['bars', null, 'word-unknown']],
    [' bars lke other', ['bars', null, 'word-unknown']],
    [' two bars', ['two', null, 'name-form']],
    [' bars like two rings', ['bars', 'two', 'name-form']],
    [' {.wide}', [null, null, 'name-missing']],
  ])('“%s”', (text, expected) => {
    expect(head(text)).toEqual(expected);
  });
});

describe('allowances', () => {
  const text = `
    # allow unit-unlikely because the meter is a toy
    # allow cells-total because we say so
    meter 10 mΩ
    # allow 5 mm for the clips
    # allow unit-unlikely
    supply cell 1.5 V # allow cells-total because they are old
  `;
  const block = blockOf(text);
  const source = block.excerpt.lines.map((line) => line.text).join('\n');

  test('say a code, a reason, and speak of the next line', () => {
    expect(block.allowances.map(({ code, reason }) => [code, reason])).toEqual([
      ['unit-unlikely', 'the meter is a toy'],
      ['cells-total', 'we say so'],
      ['cells-total', 'they are old'],
    ]);
    const [first, second, last] = block.allowances;
    expect(second?.covers).toEqual(first?.covers);
    expect(source.slice(first?.covers.from, first?.covers.to)).toBe('meter 10 mΩ');
    expect(last?.covers).toEqual({ from: source.length, to: source.length });
  });
  test('without a reason they are reported, and chance remarks are not', () => {
    const made = block.findings.filter((finding) => finding.code === 'allow-form');
    expect(made.map(({ span }) => source.slice(span.from, span.to))).toEqual(['# allow unit-unlikely']);
  });
});
