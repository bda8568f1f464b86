/**
 * Blanks for handwriting: a ruled line with its unit. Width and unit belong to the quantity, never to its value, so that a blank tells
 * nothing of the answer.
 */
import type { InsertHead } from '../sheet.ts';
import { type Html, html } from './html.ts';

/** What an insert in a sentence asks for. */
export type Asked = 'potential' | 'strength' | 'gradient' | 'current' | 'resistance' | 'ratio' | 'range';

interface Measure {
  /** Unit of the blank and of the value that teachers see in its place. */
  readonly unit: string;
  readonly width_mm: number;
}

export const measures: Readonly<Record<Asked, Measure>> = {
  potential: { unit: 'V', width_mm: 24 },
  strength: { unit: 'V/m', width_mm: 24 },
  gradient: { unit: 'V/m', width_mm: 24 },
  current: { unit: 'mA', width_mm: 24 },
  resistance: { unit: 'kΩ', width_mm: 24 },
  ratio: { unit: '', width_mm: 24 },
  range: { unit: 'V', width_mm: 44 },
};

/** The quantity that an insert in a sentence stands for; null for tables, figures and free blanks. */
export function askedBy(head: InsertHead): Asked | null {
  switch (head.kind) {
    case 'reading':
      if (head.form === 'strength') return 'strength';
      return head.form === 'of V0' ? 'ratio' : 'potential';
    case 'difference':
    case 'along':
      return 'potential';
    case 'gradient':
      return 'gradient';
    case 'mean strength':
      return 'strength';
    case 'current':
      return 'current';
    case 'resistance':
      return 'resistance';
    case 'range':
      return 'range';
    default:
      return null;
  }
}

/** True where the number stands without its unit: `no unit`, or a column whose heading carries it. */
export function isBare(head: InsertHead, bareNumber: boolean): boolean {
  return bareNumber || (head.kind === 'reading' && head.form === 'no unit');
}

export function blankFor(asked: Asked, bare: boolean): Html {
  const { unit, width_mm } = measures[asked];
  return ruled(width_mm, bare ? null : unit);
}

/** `blank V`, `blank 60 mm`: for what has no solved answer. */
export function freeBlank(unit: string | null, length_mm: number | null): Html {
  const width = Math.max(5, Math.min(length_mm ?? 24, 170));
  return ruled(width, unit);
}

function ruled(width_mm: number, unit: string | null): Html {
  const line = html`<span class="blank" style="width:${width_mm}mm"></span>`;
  return unit === null || unit === '' ? line : html`<span class="together">${line}\u00a0${unit}</span>`;
}
