/**
 * How each line of a block is written: its parts in their order, beginning with a word of the table. Capitals are values. A word with
 * several forms has them all, the usual one first.
 */

export interface FormPart {
  /** As it is shown: `diameter D`. */
  readonly label: string;
  readonly help: string;
  readonly optional: boolean;
  /** Words of the table that begin this part or stand in it, and how many values follow each: quantities, names, points. */
  readonly words: Readonly<Record<string, number>>;
  /** Values of a part that no word begins. */
  readonly values: number;
  /** True where the first value behind its word is a name. */
  readonly named?: true;
}

export interface LineForm {
  readonly word: string;
  readonly parts: readonly FormPart[];
}

/** As many as are written. */
const more = Number.POSITIVE_INFINITY;

/** A part begun by words. */
function part(label: string, help: string, words: Readonly<Record<string, number>>): FormPart {
  return { label, help, optional: false, words, values: 0 };
}
/** A part that is values alone. */
function bare(label: string, values: number, help: string): FormPart {
  return { label, help, optional: false, words: {}, values };
}
const maybe = (one: FormPart): FormPart => ({ ...one, optional: true });

const newName = (of: string): FormPart => bare('NAME', 1, `name of the ${of}, a letter first`);
const nameOf = (of: string): FormPart => bare('NAME', 1, `name of ${of}`);
const terminal = part('TERMINAL', 'positive, negative, floating, held at V, or joined to NAME', {
  positive: 0,
  negative: 0,
  floating: 0,
  'held at': 1,
  'joined to': 1,
});
const point = { centre: 0, 'centre of': 1 };
const sides = { 'right of': 1, 'left of': 1, above: 1, below: 1 };
const directions = { left: 0, right: 0, up: 0, down: 0 };
const place: FormPart = {
  label: 'PLACE',
  help: 'at (X, Y) mm, at centre, at centre of NAME, 100 mm right of NAME, or midway between NAME and NAME',
  optional: false,
  words: { at: 1, ...point, ...sides, 'midway between': 2, and: 1 },
  values: more,
};
const atPoint = part('at POINT', 'its centre: (X, Y) mm, centre, or centre of NAME', { at: 1, ...point });
const turned = maybe(part('turned ANGLE', 'anticlockwise about its centre', { turned: 1 }));
const size = bare('W × H', 2, 'width along x and height along y, before turning');
/** Sizes that may also be said in words: `10 mm wide, 120 mm high`. */
const wideHigh = (label: string, help: string): FormPart => ({
  ...part(label, help, { wide: 1, high: 0 }),
  values: 2,
});
const wideLong = wideHigh('W × L', 'width across, length along');
const opening = maybe(
  part('opening W facing DIRECTION', 'a gap in the wall; a direction is left, right, up, down or an angle', {
    opening: 1,
    facing: 1,
    ...directions,
  }),
);
const wall = part('wall T', 'thickness of the wall', { wall: 1 });
const tipAt = part('tip at POINT', 'where the outermost metal is', { 'tip at': 1, ...point });
const on = part('on NAME', 'stands on the side of that electrode', { on: 1 });
const pointing = part('pointing DIRECTION', 'left, right, up, down or an angle', {
  pointing: 1,
  ...directions,
});
const along = maybe(part('at D', 'distance from the lower or left end of the side', { at: 1 }));
const base = part('base B', 'width at the foot', { base: 1 });
const length = part('length L', 'from foot to tip', { length: 1 });
const tipRadius = maybe(part('tip radius R', 'rounding of the point', { 'tip radius': 1 }));
const corners = bare('(X, Y) (X, Y) (X, Y) … mm', more, 'corners in coordinates of the paper');
const perSquare = part('R per square', 'sheet resistance', { 'per square': 0 });
const grain = part('R per square along x, R per square along y', 'sheet resistances of paper with a grain', {
  'per square': more,
  along: more,
});

const shapes: readonly LineForm[] = [
  form('bar', newName('electrode'), wideHigh('W × H', size.help), place, turned, terminal),
  form(
    'disc',
    newName('electrode'),
    part('diameter D', 'or radius R', { diameter: 1, radius: 1 }),
    place,
    terminal,
  ),
  form(
    'ring',
    newName('electrode'),
    part('diameter D', 'outer diameter, or inside diameter D', { diameter: 1, 'inside diameter': 1 }),
    wall,
    opening,
    place,
    turned,
    terminal,
  ),
  form(
    'box',
    newName('electrode'),
    wideHigh('W × H', 'outer width and height'),
    wall,
    opening,
    place,
    turned,
    terminal,
  ),
  form('spike', newName('electrode'), base, length, tipRadius, tipAt, pointing, terminal),
  form('spike', newName('electrode'), base, length, tipRadius, on, pointing, along),
  form('prong', newName('electrode'), wideLong, tipAt, pointing, terminal),
  form('prong', newName('electrode'), wideLong, on, pointing, along),
  form('outline', newName('electrode'), corners, terminal),
  form(
    'strip',
    newName('electrode'),
    { ...corners, help: 'points of its middle line' },
    part('width W', 'width of the strip', { width: 1 }),
    terminal,
  ),
];

const internal = maybe(
  part('internal R', 'internal resistance: of each cell, or of the whole supply', { internal: 1 }),
);
const limit = maybe(part('limit I', 'current that the supply cannot exceed', { limit: 1 }));
const ac = maybe(part('ac', 'values are r.m.s. values', { ac: 0 }));
const supply = (source: string, help: string): LineForm =>
  form('supply', part(`${source} V`, help, { [source]: 1 }), internal, limit, ac);
const chemistry = maybe(
  part(
    'CHEMISTRY',
    'zinc-carbon, zinc-chloride, alkaline, nickel-metal-hydride, lithium-primary, lithium-ion or lead-acid',
    {
      'zinc-carbon': 0,
      'zinc-chloride': 0,
      alkaline: 0,
      'nickel-metal-hydride': 0,
      'lithium-primary': 0,
      'lithium-ion': 0,
      'lead-acid': 0,
    },
  ),
);
const cellSize = maybe(part('size AA', 'as on the packet', { size: 1 }));

const bench: readonly LineForm[] = [
  form('paper', bare('W × H', 2, 'width and height'), maybe({ ...perSquare, values: more })),
  form(
    'paper',
    part('A4 landscape', 'A3, A4, A5 or Letter, landscape or portrait', {
      A3: 0,
      A4: 0,
      A5: 0,
      Letter: 0,
      landscape: 0,
      portrait: 0,
    }),
    maybe({ ...perSquare, values: more }),
  ),
  form('paper', bare('W × H', 2, 'width and height'), { ...grain, values: more }),
  form('supply', part('cell V', 'voltage of the cell', { cell: 1 }), internal, limit, chemistry, cellSize),
  form(
    'supply',
    { ...part('N cells V', 'so many in series; the voltage of each', { cell: 1 }), values: more },
    internal,
    limit,
    chemistry,
    cellSize,
  ),
  supply('power-pack', 'voltage it is set to'),
  supply('eht', 'extra high tension'),
  supply('ht', 'high tension'),
  form(
    'meter',
    bare('R', 1, 'resistance of the voltmeter'),
    maybe(part('resolution V', 'smallest step of the display', { resolution: 1 })),
    maybe(part('range V', 'largest reading', { range: 1 })),
    maybe(part('probe tip D', 'diameter of the tip on the paper; 1 mm if not said', { 'probe tip': 1 })),
    maybe(
      part('black lead on NAME', 'the negative terminal of the supply if not said', { 'black lead on': 1 }),
    ),
  ),
  form('clip', nameOf('an electrode'), bare('R', 1, 'resistance between its lead and the metal')),
  form(
    'contact',
    nameOf('an electrode'),
    bare('R cm²', 1, 'resistance of the touch, for one square centimetre'),
  ),
  form('lifted', nameOf('an electrode'), size, atPoint, turned),
  form('hole', size, atPoint, turned),
  form('hole', part('disc diameter D', 'a round hole', { disc: 1, diameter: 1, radius: 1 }), atPoint),
  form('hole', {
    ...part('outline (X, Y) … mm', 'corners', { outline: more }),
    values: more,
  }),
  form(
    'slit',
    part('from POINT', 'one end', { from: 1, ...point }),
    part('to POINT', 'the other end', { to: 1, ...point }),
  ),
  form('painted', size, atPoint, turned, { ...perSquare, values: more }),
  form('copper', bare('T', 1, 'thickness of the sheet')),
];

const rowFrom = part('from END', 'an electrode, a point, or centre of NAME', { from: 1, ...point });
const rowTo = part('to END', 'an electrode, a point, or centre of NAME', { to: 1, ...point });
const distances: FormPart = {
  ...part('at D, D, …', 'distances from the first end', { at: more }),
};

const readings: readonly LineForm[] = [
  form(
    'probe',
    newName('probe'),
    part('at POINT', '(X, Y) mm, centre, or centre of NAME', { at: 1, ...point }),
  ),
  form('probe', newName('probe'), {
    ...part('at ROW D', 'a row, and a distance along it', { at: 2, along: 1 }),
    named: true,
  }),
  form('row', newName('row'), rowFrom, rowTo, part('every D', 'distance between readings', { every: 1 })),
  form(
    'row',
    newName('row'),
    rowFrom,
    rowTo,
    part('in N steps', 'one reading more than steps', { in: more, steps: 0 }),
  ),
  form('row', newName('row'), rowFrom, rowTo, {
    ...part('N readings', 'both ends are read', { readings: 0 }),
    values: 1,
  }),
  form('row', newName('row'), rowFrom, rowTo, distances),
  form(
    'row',
    newName('row'),
    rowFrom,
    part('DIRECTION', 'left, right, up, down or an angle', directions),
    distances,
  ),
  form(
    'equipotentials',
    bare('V', 1, 'the first'),
    part('to V', 'the last', { to: 1 }),
    part('every V', 'step between them', { every: 1 }),
  ),
  form('equipotentials', part('every V', 'all multiples inside the potentials of the metal', { every: 1 })),
  form('equipotentials', bare('V, V, …', more, 'the potentials to draw')),
  form('field-lines', bare('N', 1, 'how many leave the positive electrodes in all')),
  form(
    'draw',
    part(
      'PART, PART …',
      'electrodes, probes, dimensions, ruling, circuit, equipotentials, field-lines, values; everything, nothing',
      {
        electrodes: more,
        probes: more,
        dimensions: more,
        ruling: more,
        circuit: more,
        equipotentials: more,
        'field-lines': more,
        values: more,
        everything: more,
        nothing: more,
      },
    ),
    maybe(
      part('for AUDIENCE', 'pupils, teachers or technicians', {
        for: 1,
        pupils: 0,
        teachers: 0,
        technicians: 0,
      }),
    ),
  ),
];

const variations: readonly LineForm[] = [
  form('change', nameOf('an electrode'), terminal),
  form('move', nameOf('an electrode, or a probe'), place, turned),
  form('move', nameOf('a spike or prong'), tipAt, maybe(pointing)),
  form('move', nameOf('a spike or prong'), on, pointing, along),
  form(
    'move',
    nameOf('a row'),
    rowFrom,
    rowTo,
    maybe({
      ...part('STEPS', 'every D, in N steps, N readings, or at D, D, …', {
        every: 1,
        in: more,
        steps: 0,
        readings: 0,
        at: more,
      }),
      values: more,
    }),
  ),
  form('without', nameOf('an electrode, a probe or a row')),
  form('reverse', part('supply', 'swaps its leads', { supply: 0 })),
];

export const lineForms: readonly LineForm[] = [...shapes, ...bench, ...readings, ...variations];

function form(word: string, ...parts: readonly FormPart[]): LineForm {
  return { word, parts };
}
