/** What cells give, mA h at the small currents of this practical. From memory and common practice: makers' sheets differ. */
import type { Chemistry } from '../../block/tree.ts';

interface Capacity {
  readonly name: string;
  readonly capacity_mAh: Readonly<Partial<Record<Chemistry, number>>>;
}

/** By size as it is written, capitals aside. The lower ends of what is common. */
const sizes: Readonly<Record<string, Capacity>> = {
  aaa: {
    name: 'AAA',
    capacity_mAh: { 'zinc-carbon': 300, 'zinc-chloride': 500, alkaline: 900, 'nickel-metal-hydride': 700 },
  },
  // R6: 400 mA h to 900 mA h, zinc chloride 1000 mA h to 1500 mA h (published).
  aa: {
    name: 'AA',
    capacity_mAh: { 'zinc-carbon': 400, 'zinc-chloride': 1000, alkaline: 2000, 'nickel-metal-hydride': 1800 },
  },
  c: {
    name: 'C',
    capacity_mAh: {
      'zinc-carbon': 1500,
      'zinc-chloride': 3000,
      alkaline: 7000,
      'nickel-metal-hydride': 3000,
    },
  },
  d: {
    name: 'D',
    capacity_mAh: {
      'zinc-carbon': 4000,
      'zinc-chloride': 6000,
      alkaline: 12_000,
      'nickel-metal-hydride': 6000,
    },
  },
};

/** Other names of the sizes. */
const also: Readonly<Record<string, string>> = {
  r03: 'aaa',
  lr03: 'aaa',
  r6: 'aa',
  lr6: 'aa',
  r14: 'c',
  lr14: 'c',
  r20: 'd',
  lr20: 'd',
};

/** A twentieth of it is a lesson's fair share. */
export const fairPart = 1 / 20;

export function capacityOf(
  size: string | null,
  chemistry: Chemistry | null,
): { readonly name: string; readonly capacity_mAh: number } | null {
  if (size === null || chemistry === null) return null;
  const written = size.toLowerCase();
  const known = sizes[also[written] ?? written];
  const capacity_mAh = known?.capacity_mAh[chemistry];
  return known === undefined || capacity_mAh === undefined ? null : { name: known.name, capacity_mAh };
}
