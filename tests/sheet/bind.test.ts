import { describe, expect, test } from 'vitest';
import { wantedSamples } from '../../shared/sheet/inserts/bind.ts';
import { bound, checkBinding, like, twoBars } from './sheets.ts';

const oneSetup = (text: string): ReturnType<typeof bound> => bound(`${text}\n\n${twoBars}`);

test('a name is found where one setup has it', () => {
  const { bound: inserts, findings } = oneSetup(
    '?{M} ?{bars.N} ?{A at 30 mm} ?{current} ?{N.current} ?{resistance}',
  );
  expect(findings).toEqual([]);
  expect(inserts.map(({ target }) => target)).toMatchObject([
    { kind: 'reading', spot: { kind: 'probe', index: 0 } },
    { kind: 'reading', spot: { kind: 'electrode', index: 0 } },
    { kind: 'along', sample: 0 },
    { kind: 'current', electrode: null },
    { kind: 'current', electrode: 0 },
    { kind: 'resistance' },
  ]);
});

test('places beside probes and rows are asked of their setup, in order', () => {
  const binding = bound(
    `?{bars.A at 30 mm} ?{short.A at 5 mm} ?{mean strength bars.A from 0 mm to 5 mm}\n\n${twoBars}${like}`,
  );
  const [bars, short] = binding.bound.flatMap(({ target }) =>
    target?.kind === 'along' ? [target.setup] : [],
  );
  if (bars === undefined || short === undefined) throw new Error('not bound');
  // Row A starts at the inner edge of N, 65 mm from the left.
  expect(wantedSamples(binding, bars)).toEqual([
    { x: 95, y: 80 },
    { x: 65, y: 80 },
    { x: 70, y: 80 },
  ]);
  expect(wantedSamples(binding, short)).toEqual([{ x: 70, y: 80 }]);
  expect(binding.bound[2]?.target).toMatchObject({ kind: 'mean strength', from: 1, to: 2, distance_mm: 5 });
});

test('rows of one name are lettered, headings are kept', () => {
  const heads = (text: string): unknown => {
    const target = bound(`${text}\n\n${twoBars}${like}`).bound[0]?.target;
    return target?.kind === 'readings' ? target.rows.map(({ heading }) => heading) : null;
  };
  expect(heads('?{readings bars.A, short.A}')).toEqual(['A (a)', 'A (b)']);
  expect(heads('?{readings bars.A as "before", short.A}')).toEqual(['before', 'A']);
});

describe('what cannot be bound is named and stays a box', () => {
  test('unknown names', () => {
    checkBinding(
      `
      ?{Mm} ?{bar.M} ?{barz.current} ?{gradient B} ?{p.d. M to Q}
        ^^ error insert-unknown The setup has no Mm. \`M\`?
        => ?{M} ?{bar.M} ?{barz.current} ?{gradient B} ?{p.d. M to Q}
              ^^^ error insert-unknown No setup is called \`bar\`. \`bars\`?
              => ?{Mm} ?{bars.M} ?{barz.current} ?{gradient B} ?{p.d. M to Q}
                       ^^^^ error insert-unknown
                                                ^ error insert-unknown The setup has no B. \`A\`?
                                                               ^ error insert-unknown
      `,
      twoBars,
    );
  });

  test('a second setup makes a name ambiguous', () => {
    checkBinding(
      `
      ?{M}
        ^ error insert-ambiguous M is in two setups.
        => ?{bars.M}
        => ?{short.M}
      ?{current}
        ^^^^^^^ error insert-ambiguous
        => ?{bars.current}
        => ?{short.current}

      ?{drawing "x"}
               | error insert-ambiguous
               => ?{drawing bars "x"}
               => ?{drawing short "x"}
      `,
      twoBars + like,
    );
    const { bound: inserts } = bound(`?{M}\n\n${twoBars}${like}`);
    expect(inserts[0]).toMatchObject({ target: null, trouble: 'M is in two setups.' });
  });

  test('names of another kind', () => {
    checkBinding(
      `
      ?{A} ?{M.current} ?{M at 5 mm} ?{N.resistance} ?{bars.N.resistance}
        ^ error insert-kind A is a row.
             ^ error insert-kind M is a probe. A current
                          ^ error insert-kind M is a probe. A row
                                       ^ error insert-unknown No setup is called \`N\`
                                                       ^^^^^^ error insert-kind
      `,
      twoBars,
    );
  });

  test('places beyond the row', () => {
    checkBinding(
      `
      ?{A at 100 mm} ?{A at 101 mm} ?{A at -1 mm}
                       ^ error insert-beyond A is 100 mm long.
                                      ^ error insert-beyond counted from its first point
      `,
      twoBars,
    );
  });

  test('a name whose line cannot be read is not named again', () => {
    const { bound: inserts, findings } = bound('?{M}\n\n```electrodes\nprobe M at 5 mm, 3 mm\n```\n');
    expect(findings).toEqual([]);
    expect(inserts[0]).toMatchObject({ target: null, trouble: 'The line that gives M cannot be read.' });
  });
});

describe('allowances', () => {
  test('silence the next line, and are named where nothing needs them', () => {
    checkBinding(
      `
      <!-- papervolt: allow html-escaped because we want to see it -->
      Text with <b>marks</b>

      <!-- papervolt: allow html-escaped because of nothing -->
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning allow-unused needs \`html-escaped\`
      Text

      <!-- papervolt: allow html-escapd because of a slip -->
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning allow-unused \`html-escaped\`?
      <!-- papervolt: allow html-escaped -->
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning comment-unknown Say why
      <!-- papervolt: newpage -->
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning comment-unknown
      <!-- papervolt: new page -->
      `,
      twoBars,
    );
  });
});
