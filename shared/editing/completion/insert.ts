/** What may stand in an insert: its words, and the names of setups, probes, electrodes and rows. */
import { drawingParts } from '../../block/tree.ts';
import type { Draft } from '../../checks/examine.ts';
import { usualUnits } from '../../quantity/units.ts';
import type { Setup } from '../../setup/setup.ts';
import { columnWords, figureWords, helpWords } from '../../sheet/inserts/figures.ts';
import { type Offer, offer } from './completion.ts';

/** The words that an insert begins with: what each makes, and how it goes on. */
export const headHelp: Readonly<Record<string, readonly [help: string, pattern: string]>> = {
  readings: ['a table of distance and reading', 'readings «A»'],
  drawing: ['the setup drawn', 'drawing «bars» "«caption»"'],
  graph: ['a graph (not printed yet)', 'graph «A»: V against distance'],
  plot: ['a plotting sheet (not printed yet)', 'plot «bars»'],
  placement: ['outlines to lay under the paper (not printed yet)', 'placement «bars»'],
  'cut-outs': ['pieces to cut out (not printed yet)', 'cut-outs «bars»'],
  circuit: ['a circuit diagram (not printed yet)', 'circuit «bars»'],
  kit: ['a kit list (not printed yet)', 'kit'],
  stack: ['the layers on the board (not printed yet)', 'stack'],
  marks: ['the table of marks (not printed yet)', 'marks'],
  blank: ['room to write, with a unit', 'blank «V»'],
  range: ['readings to accept', 'range «M»'],
  gradient: ['slope of the readings of a row', 'gradient «A»'],
  'mean strength': ['mean strength along a part of a row', 'mean strength «A» from «0 mm» to «5 mm»'],
  'p.d.': ['difference of two readings', 'p.d. «M» to «K»'],
  current: ['current that the supply gives', 'current'],
  resistance: ['resistance of the paper between the electrodes', 'resistance'],
};

/** Null where no insert is being written at the offset. */
export function insertOffers(draft: Draft, offset: number): readonly Offer[] {
  const written = writtenBefore(draft, offset);
  if (written === null) return [];
  const { setups } = draft;
  const dotted = /(?:^|[\s,])([\p{L}\p{M}\p{Nd}.-]+)\.[\p{L}\p{M}\p{Nd}-]*$/u.exec(written)?.[1];
  if (dotted !== undefined && !/(?:^|\s)p\.[\p{L}]*$/u.test(written)) return behindDot(setups, dotted);
  const first = /^\s*([\p{L}\p{M}\p{Nd}.-]+)/u.exec(written)?.[1];
  if (first !== undefined && /,\s*\p{L}*$/u.test(written) && !figureWords.some((word) => word === first))
    return [noUnit];
  if (/\s\d[\d.]*\s+\p{L}*$/u.test(written)) {
    return usualUnits.length.map((unit) => offer('unit', unit, 'a length'));
  }
  const [, head = '', rest = ''] = /^\s*(mean strength|[\p{L}.-]+)\s(.*)$/u.exec(written) ?? [];
  if (head === '') return [...namesOf(setups, 'all'), ...headOffers(setups)];
  if (!Object.hasOwn(headHelp, head)) return behindName(setups, head, rest);
  return /\S\s/u.test(rest) ? further(setups, head, written) : behindHead(setups, head, written);
}

const noUnit = offer('value', 'no unit', 'the number alone');

/** Behind `M` or `bars.A`: what else may be asked of it. */
function behindName(setups: readonly Setup[], written: string, rest: string): readonly Offer[] {
  if (/^\s*of\s/u.test(rest)) return [offer('value', 'V0', 'the voltage of the supply')];
  if (/\S\s/u.test(rest)) return [];
  const name = written.slice(written.indexOf('.') + 1);
  const isRow = setups.some(({ rows }) => rows.some((row) => row.name === name));
  return isRow
    ? [offer('word', 'at', 'the reading at a distance along the row', { text: 'at «30 mm»' })]
    : [offer('word', 'of V0', 'the reading divided by the voltage of the supply')];
}

const sizes: readonly Offer[] = [
  offer('value', 'half size', 'half of the text column wide'),
  offer('value', 'full size', 'as wide as the text column'),
];

/** Behind the first name of a head. */
function further(setups: readonly Setup[], head: string, written: string): readonly Offer[] {
  if (head === 'mean strength') {
    const word = /\sfrom\s/u.test(written) ? 'to' : 'from';
    return [offer('word', word, 'a distance along the row', { text: `${word} «5 mm»` })];
  }
  if (head === 'p.d.') {
    return /\sto\s/u.test(written) ? namesOf(setups, 'spots') : [offer('word', 'to', 'the second place')];
  }
  const help =
    head === 'graph'
      ? helpWords.map((word) => offer('value', `help ${word}`, 'what is drawn for pupils'))
      : [];
  return figureWords.some((word) => word === head)
    ? [...behindHead(setups, head, written), ...help, ...sizes]
    : [];
}

/** With names of this sheet where it has them. */
function headOffers(setups: readonly Setup[]): readonly Offer[] {
  const label = (what: 'rows' | 'spots', at: number): string | undefined => namesOf(setups, what)[at]?.label;
  const ours: Readonly<Record<string, string | undefined>> = {
    bars: setups[0]?.name,
    A: label('rows', 0),
    M: label('spots', 0),
    K: label('spots', 1),
  };
  const named = (pattern: string): string =>
    pattern.replace(/«([^»]+)»/gu, (place, example: string) => {
      const name = Object.hasOwn(ours, example) ? ours[example] : undefined;
      return name === undefined ? place : `«${name}»`;
    });
  return Object.entries(headHelp).map(([head, [help, pattern]]) =>
    offer('word', head, help, { text: named(pattern) }),
  );
}

/** The text of the insert from its brace up to the cursor, which stands in an insert that the reader of the sheet has seen. */
function writtenBefore({ sheet }: Draft, offset: number): string | null {
  const insert = sheet.inserts.find(({ span }) => offset >= span.from + 2 && offset <= span.to);
  const closed = insert !== undefined && sheet.source.text.charAt(insert.span.to - 1) === '}';
  if (insert !== undefined && (!closed || offset < insert.span.to)) {
    return sheet.source.text.slice(insert.span.from + 2, offset);
  }
  // An unclosed insert ends before the spaces that its line ends with.
  const open = sheet.inserts.find(
    ({ span }) => span.to < offset && sheet.source.text.slice(span.to, offset).trim() === '',
  );
  const text = open === undefined ? '' : sheet.source.text.slice(open.span.from, offset);
  return text === '' || /[}\n\r]/u.test(text) ? null : text.slice(2);
}

function behindHead(setups: readonly Setup[], head: string, written: string): readonly Offer[] {
  if (head === 'readings' || head === 'graph') {
    return written.includes(':')
      ? columnWords.map((word) => offer('value', word, 'column'))
      : namesOf(setups, 'rows');
  }
  if (head === 'drawing' && written.includes(':')) {
    return drawingParts.map((word) => offer('value', word, 'part of the drawing'));
  }
  if (figureWords.some((word) => word === head)) return setups.map(setupOffer);
  if (head === 'gradient' || head === 'mean strength') return namesOf(setups, 'rows');
  if (head === 'range') return namesOf(setups, 'spots');
  if (head === 'p.d.') return namesOf(setups, 'spots');
  if (head === 'blank') {
    return [...usualUnits.potential, ...usualUnits.current, 'kΩ'].map((unit) => offer('unit', unit, 'unit'));
  }
  return [];
}

function behindDot(setups: readonly Setup[], before: string): readonly Offer[] {
  const setup = setups.find(({ name }) => name === before);
  if (setup !== undefined) {
    return [
      ...namesOf([setup], 'bare'),
      offer('word', 'current', 'current that the supply gives'),
      offer('word', 'resistance', 'resistance of the paper between the electrodes'),
    ];
  }
  const name = before.slice(before.indexOf('.') + 1);
  const isElectrode = setups.some(({ electrodes }) => electrodes.some((one) => one.name === name));
  return isElectrode
    ? [offer('word', 'current', 'current into the paper')]
    : [offer('word', 'strength', 'size of the field there')];
}

const setupOffer = ({ name }: Setup): Offer => offer('name', name, 'setup');

/** Names of the setups; with their setup before them where more than one setup has the name. */
function namesOf(setups: readonly Setup[], what: 'all' | 'rows' | 'spots' | 'bare'): readonly Offer[] {
  const named = setups.flatMap((setup) => [
    ...(what === 'rows' ? [] : setup.probes.map(({ name }) => ({ setup, name, kind: 'probe' }))),
    ...(what === 'rows' ? [] : setup.electrodes.map(({ name }) => ({ setup, name, kind: 'electrode' }))),
    ...(what === 'spots' ? [] : setup.rows.map(({ name }) => ({ setup, name, kind: 'row' }))),
  ]);
  return named.map(({ setup, name, kind }) => {
    const alike = named.filter((other) => other.name === name).length;
    const label = what === 'bare' || alike < 2 ? name : `${setup.name}.${name}`;
    return offer('name', label, `${kind} of ${setup.name}`);
  });
}
