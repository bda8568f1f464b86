/** A setup in words, for readers that cannot see the drawing. From the setup alone; the setup's own name is never said. */
import type { Electrode, Row, Setup } from '../setup/setup.ts';
import type { Look } from './page.ts';
import { bareMillimetres, millimetres, volts } from './values.ts';

export function titleOf(setup: Setup): string {
  return `Set-up on conducting paper: ${listed(setup.electrodes.map(({ name }) => name)) || 'no electrodes yet'}`;
}

/** What is drawn beside the set-up. */
export function solvedTitleOf(setup: Setup, look: Look): string {
  const lines = look.parts.includes('equipotentials') ? ['equipotentials'] : [];
  const fields = look.parts.includes('field-lines') ? ['field lines'] : [];
  const drawn = listed([...lines, ...fields]);
  if (drawn === '') return titleOf(setup);
  const between = listed(setup.electrodes.map(({ name }) => name));
  return `${capitalised(drawn)} on conducting paper: ${between}`;
}

export function describeSetup(setup: Setup): string {
  const sentences = [
    `${capitalised(electrodeWords(setup))}, on ${paperWords(setup)}${terminalWords(setup)}.`,
    ...setup.probes.map(({ name, at }) => `Place of a reading ${name} at ${point(at)}.`),
    ...setup.rows.map(rowWords),
    counted(setup.holes.length, 'hole', 'is cut out of the paper', 'are cut out of the paper'),
    counted(setup.slits.length, 'slit', 'is cut in the paper', 'are cut in the paper'),
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  const last = words[words.length - 1];
  if (last === undefined) return '';
  return words.length === 1 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

export const point = ({ x, y }: { readonly x: number; readonly y: number }): string =>
  `(${bareMillimetres(x)}, ${bareMillimetres(y)})\u00a0mm`;

/** Pieces alike in shape and size are counted together: `two bars, 10 mm by 120 mm, 100 mm apart`. */
function electrodeWords(setup: Setup): string {
  const groups = new Map<string, { word: string; size: string; count: number }>();
  for (const piece of setup.electrodes.flatMap(({ pieces }) => pieces)) {
    const { word, size } = pieceWords(piece);
    const known = groups.get(`${word} ${size}`);
    if (known === undefined) groups.set(`${word} ${size}`, { word, size, count: 1 });
    else known.count++;
  }
  const all = [...groups.values()].map(({ word, size, count }) => {
    const name =
      count === 1 ? `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}` : `${numberWord(count)} ${plural(word)}`;
    return groups.size === 1 ? `${name}, ${size}` : `${name} (${size})`;
  });
  if (all.length === 0) return 'no electrodes yet';
  const gap = gapWords(setup.electrodes);
  return `${listed(all)}${gap}`;
}

/** A piece by itself: `bar, 10 mm by 120 mm`. */
export function describePiece(piece: Electrode['pieces'][number]): string {
  const { word, size } = pieceWords(piece);
  return `${word}, ${size}`;
}

const plural = (word: string): string => (word === 'box' ? 'boxes' : `${word}s`);

function pieceWords({ shape, geometry }: Electrode['pieces'][number]): { word: string; size: string } {
  const sized = (a: number, b: number): string => `${millimetres(a)} by ${millimetres(b)}`;
  switch (shape.shape) {
    case 'bar':
    case 'prong':
      return { word: shape.shape, size: sized(shape.size.width.value, shape.size.height.value) };
    case 'box':
      return {
        word: 'box',
        size: `${sized(shape.size.width.value, shape.size.height.value)}, wall ${millimetres(shape.wall.value)}`,
      };
    case 'disc':
      return { word: 'disc', size: `diameter ${millimetres(shape.diameter.value)}` };
    case 'ring':
      return { word: 'ring', size: ringWords(shape) };
    case 'spike':
      return {
        word: 'spike',
        size: `base ${millimetres(shape.base.value)}, length ${millimetres(shape.length.value)}`,
      };
    case 'strip':
      return { word: 'strip', size: `width ${millimetres(shape.width.value)}` };
    case 'outline':
      return { word: 'outline', size: `${geometry.outer.edges.length} corners` };
  }
}

function ringWords({ diameter, inside, wall, opening }: RingSizes): string {
  const said = [
    diameter === null ? [] : [`diameter ${millimetres(diameter.value)}`],
    inside === null ? [] : [`inside diameter ${millimetres(inside.value)}`],
    wall === null ? [] : [`wall ${millimetres(wall.value)}`],
    opening === null ? [] : [`with an opening of ${millimetres(opening.width.value)}`],
  ];
  return said.flat().join(', ');
}

interface Length {
  readonly value: number;
}
interface RingSizes {
  readonly diameter: Length | null;
  readonly inside: Length | null;
  readonly wall: Length | null;
  readonly opening: { readonly width: Length } | null;
}

/** Said where just two electrodes face each other along x or y. */
function gapWords(electrodes: readonly Electrode[]): string {
  const [a, b] = electrodes;
  if (a === undefined || b === undefined || electrodes.length !== 2) return '';
  const gap = Math.max(a.box.x0 - b.box.x1, b.box.x0 - a.box.x1, a.box.y0 - b.box.y1, b.box.y0 - a.box.y1);
  return gap > 0 ? `, ${millimetres(gap)} apart` : '';
}

function paperWords({ paper }: Setup): string {
  if (paper === null) return 'paper of unknown size';
  const size = `paper ${millimetres(paper.width_mm)} by ${millimetres(paper.height_mm)}`;
  const ohms = paper.resistance_ohm;
  return ohms !== null && ohms[0] !== ohms[1] ? `${size} with a grain` : size;
}

function terminalWords(setup: Setup): string {
  const said = setup.electrodes.flatMap(({ name, connection, joinedTo, partOf }) => {
    if (partOf !== null) return [`${name} on ${partOf}`];
    if (joinedTo !== null) return [`${name} joined to ${joinedTo}`];
    switch (connection?.kind) {
      case 'positive':
      case 'negative':
        return [`${name} to ${connection.kind}`];
      case 'held':
        return [`${name} held at ${volts(connection.potential_V)}`];
      case 'floating':
        return [`${name} not connected`];
      default:
        return [];
    }
  });
  return said.length === 0 ? '' : `; ${said.join(', ')}`;
}

function rowWords({ name, points }: Row): string {
  const first = points[0];
  const last = points[points.length - 1];
  if (first === undefined || last === undefined) return '';
  const many = points.length === 1 ? '1 reading' : `${points.length} readings`;
  return `Row ${name}: ${many} from ${point(first.at)} to ${point(last.at)}.`;
}

function counted(count: number, word: string, one: string, more: string): string {
  if (count === 0) return '';
  return count === 1 ? `One ${word} ${one}.` : `${capitalised(numberWord(count))} ${word}s ${more}.`;
}

const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const numberWord = (count: number): string => numbers[count] ?? String(count);

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
