/** Sheets at random: every shape, place, unit, prefix and line end. */
import fc from 'fast-check';

const unit = fc.constantFrom('mm', 'cm', 'm');
const perUnit = { mm: 1, cm: 10, m: 1000 } as const;
/** A length in some unit, with or without decimals. */
const length = (min: number, max: number) =>
  fc.tuple(fc.integer({ min: min * 10, max: max * 10 }), unit).map(([tenths, of]) => {
    const value = Number((tenths / 10 / perUnit[of as keyof typeof perUnit]).toFixed(6));
    return `${value} ${of}`;
  });
const pair = fc.oneof(
  fc
    .tuple(fc.integer({ min: 60, max: 180 }), fc.integer({ min: 50, max: 110 }))
    .map(([x, y]) => `(${x}, ${y}) mm`),
  fc
    .tuple(fc.integer({ min: 60, max: 180 }), fc.integer({ min: 50, max: 110 }))
    .map(([x, y]) => `(${x / 10}, ${y / 10}) cm`),
  fc.tuple(length(60, 180), length(50, 110)).map(([x, y]) => `(${x}, ${y})`),
);
const turn = fc.oneof(
  { weight: 2, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: fc.integer({ min: -80, max: 80 }).map((a) => `, turned ${a}°`) },
);
const place = fc.oneof(
  pair.map((at) => `at ${at}`),
  fc.constantFrom('at centre', 'at centre of N', 'midway between N and K'),
  fc
    .tuple(length(2, 90), fc.constantFrom('right of', 'left of', 'above', 'below'), fc.constantFrom('N', 'K'))
    .map((parts) => parts.join(' ')),
);
const placed = (size: string, word: string) =>
  fc.tuple(place, turn).map(([at, turned]) => `${word} T ${size}, ${at}${turned} floating`);
const thing = fc.oneof(
  placed('8 mm × 30 mm', 'bar'),
  placed('diameter 20 mm', 'disc'),
  placed('diameter 24 mm, wall 3 mm, opening 6 mm facing 30°', 'ring'),
  placed('30 mm × 20 mm, wall 3 mm', 'box'),
  fc
    .tuple(pair, fc.constantFrom('left', 'up', '40°'))
    .map(([at, way]) => `spike T base 10 mm, length 20 mm, tip at ${at} pointing ${way} floating`),
  fc.constantFrom('left', 'right').map((way) => `spike T base 10 mm, length 20 mm on N pointing ${way}`),
  fc
    .tuple(fc.constantFrom('left', 'up'), length(3, 8))
    .map(([way, along]) => `prong T 4 mm × 20 mm on N pointing ${way} at ${along}`),
  fc.tuple(fc.integer({ min: 60, max: 150 }), unit).map(([x, of]) => {
    const n = (mm: number): number => Number((mm / perUnit[of as keyof typeof perUnit]).toFixed(6));
    return `outline T (${n(x)}, ${n(50)}) (${n(x + 20)}, ${n(50)}) (${n(x + 5)}, ${n(80)}) ${of} floating`;
  }),
  fc.constant(
    'strip T (60, 20) (9, 6) cm (90 mm, 40 mm), width 4 mm floating'.replace('(60, 20) ', '(6, 2) '),
  ),
  pair.map((at) => `disc T diameter 10 mm at ${at} floating\nbar T 4 mm × 20 mm, 12 mm right of N`),
);
const probe = fc.oneof(
  pair.map((at) => `probe M at ${at}`),
  fc.constantFrom('probe M at centre of T', 'probe M at A 20 mm', 'probe M at 3 cm along A'),
);
const row = fc.constantFrom(
  'row A from N to K every 10 mm',
  'row A from N to (21, 8) cm in 5 steps',
  'row A from centre of N right at 10 mm, 60 mm',
  'row A from (20, 80) mm to centre of K 11 readings',
);
const fixed =
  'bar N 10 mm × 40 mm at (40, 80) mm negative\ndisc K diameter 16 mm at (200, 85) mm positive\nprobe Z at (120, 10) mm';

/** Two setups, the second like the first, in a quotation, a list or neither; `T` has any shape and any place. */
export const randomSheet = fc
  .record({
    thing,
    probe,
    row,
    prefix: fc.constantFrom('', '> ', '  '),
    end: fc.constantFrom('\n', '\r\n'),
    like: fc.constantFrom('', 'change K floating', 'move T'),
  })
  .map(({ thing, probe, row, prefix, end, like }) => {
    const shifts = like === 'move T' && /^(bar|disc|ring|box|outline|strip)/u.test(thing);
    const varied =
      like === 'move T' ? (shifts ? ['move  T  at (100, 70) mm'] : []) : [like].filter((line) => line !== '');
    const lines = [
      '```electrodes one',
      'paper 240 mm × 160 mm',
      'supply cell 1.5 V',
      ...fixed.split('\n'),
      ...thing.split('\n'),
      row,
      probe,
      '```',
      '',
      '```electrodes two like one',
      ...varied,
      '```',
    ];
    const text = lines.map((line) => `${prefix}${line}${end}`).join('');
    return prefix === '  ' ? `- in a list${end}${end}${text}` : text;
  });
