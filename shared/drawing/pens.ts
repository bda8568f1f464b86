/** How each style is drawn: width, dash, ink; and the inks of each theme. All lengths in printed mm. */
import type { Style } from './scene.ts';

export type Ink = 'ink' | 'ground' | 'field' | 'faint' | 'none';

export interface Pen {
  readonly width: number;
  readonly dash?: readonly number[];
  readonly ink: Ink;
  readonly fill: Ink;
  readonly cap?: 'round' | 'square';
}

const line = (width: number, ink: Ink = 'ink'): Pen => ({ width, ink, fill: 'none' });

/** Style carries the meaning, ink only helps: the drawing reads the same in grey. */
export const pens: Readonly<Record<Style, Pen>> = {
  board: line(0.25),
  paper: line(0.35),
  tick: line(0.18),
  'paper-clip': { width: 0.25, ink: 'ink', fill: 'ground' },
  ruling: line(0.13, 'faint'),
  metal: line(0.7),
  'metal-face': { width: 0, ink: 'none', fill: 'ground' },
  hatch: line(0.25),
  overhang: line(0.25),
  equipotential: { ...line(0.35), dash: [3.5, 1.2] },
  'carbon-dot': { width: 0, ink: 'none', fill: 'ink' },
  'field-line': line(0.5, 'field'),
  barb: line(0.5, 'field'),
  lead: { ...line(0.5), cap: 'round' },
  casing: line(1.7, 'ground'),
  clip: { width: 0.35, ink: 'ink', fill: 'ground' },
  terminal: { width: 0.35, ink: 'ink', fill: 'ground' },
  junction: { width: 0, ink: 'none', fill: 'ink' },
  probe: { width: 0, ink: 'none', fill: 'ink' },
  leader: line(0.18),
  row: line(0.25),
  dimension: line(0.18),
  'dimension-end': { width: 0, ink: 'none', fill: 'ink' },
  hole: { width: 0.35, ink: 'ink', fill: 'ground' },
  cut: { ...line(0.35), cap: 'round' },
  patch: { ...line(0.25), dash: [0.6, 0.8] },
  lifted: { width: 0.25, dash: [0.6, 0.8], ink: 'ink', fill: 'ground' },
  grain: line(0.35),
  circuit: { width: 0.35, ink: 'ink', fill: 'ground' },
  'circuit-thick': line(1.2),
};

/** `editor`: the page round the drawing says which colours these are, and changes them with the editor's own. */
export type Theme = 'print' | 'editor';

/** Colours by theme; a further theme is one more column. */
export const themes: Readonly<Record<Theme, Readonly<Record<Ink, string>>>> = {
  print: { ink: '#1C1C1C', ground: '#FFFFFF', field: '#005A8C', faint: '#9A9A9A', none: 'none' },
  editor: {
    ink: 'var(--papervolt-ink, #1C1C1C)',
    ground: 'var(--papervolt-ground, #FFFFFF)',
    field: 'var(--papervolt-field, #005A8C)',
    faint: 'var(--papervolt-faint, #9A9A9A)',
    none: 'none',
  },
};

export const fontStack = "system-ui, -apple-system, 'Segoe UI', Roboto, 'Liberation Sans', Arial, sans-serif";

export const textSize = { name: 3.9, value: 3.2, key: 3.2, sign: 3.9, corner: 2.8 } as const;

/** Hatch lines: distance between them, at 45°. */
export const hatchSpacing = 1.2;
export const probeDiameter = 1.5;
export const carbonDiameter = 0.9;
