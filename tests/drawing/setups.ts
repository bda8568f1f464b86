/** Setups to draw, written as a teacher writes them, with names for the kept drawings. */
import type { Setup } from '../../shared/setup/setup.ts';
import { setupsOf } from '../setup/blocks.ts';

const bench = `
  paper   240 mm × 160 mm, 5 kΩ per square
  supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
  meter   10 MΩ, resolution 0.01 V, probe tip 1 mm`;

const texts = {
  bars: `${bench}
  bar     N  10 mm × 120 mm at (60, 80) mm      negative
  bar     P  10 mm × 120 mm, 100 mm right of N  positive
  probe   M  at (95, 95) mm
  row     A  from N to P every 10 mm
  equipotentials 0.25 V to 1.25 V every 0.25 V`,

  ring: `${bench}
  bar     N  10 mm × 120 mm at (60, 80) mm      negative
  bar     P  10 mm × 120 mm, 100 mm right of N  positive
  ring    R  diameter 50 mm, wall 4 mm, midway between N and P  floating
  row     A  from N to P every 10 mm
  probe   C  at centre of R
  equipotentials 0.2 V to 1.4 V every 0.2 V`,

  joined: `${bench}
  bar     N  10 mm × 120 mm at (60, 80) mm      negative
  bar     P  10 mm × 120 mm, 100 mm right of N  positive
  ring    R  diameter 50 mm, wall 4 mm, midway between N and P  joined to P
  probe   C  at centre of R
  equipotentials 0.2 V to 1.4 V every 0.2 V`,

  spike: `${bench}
  bar     N  10 mm × 120 mm at (50, 80) mm      negative
  bar     P  10 mm × 120 mm at (200, 80) mm     positive
  spike   S  base 20 mm, length 80 mm on P pointing left
  probe   K  at (105, 80) mm
  row     A  from S to N every 10 mm
  equipotentials 0.25 V to 1.25 V every 0.25 V`,

  coaxial: `
  paper   240 mm × 200 mm, 5 kΩ per square
  supply  2 cells 1.5 V
  meter   10 MΩ
  disc    D  diameter 20 mm at centre  positive
  ring    R  inside diameter 160 mm, wall 8 mm at centre  negative
  row     E  from centre of D right at 20 mm, 40 mm, 60 mm
  probe   Q  at (120, 145) mm
  equipotentials 0.5 V to 2.5 V every 0.5 V`,

  busy: `
  paper   280 mm × 180 mm, 4 kΩ per square along x, 6 kΩ per square along y
  supply  power-pack 6 V, limit 1 A
  meter   10 MΩ, black lead on K
  bar     N  40 mm × 12 mm at (30, 178) mm      negative
  bar     P  12 mm × 80 mm at (240, 90) mm turned 20°  positive
  box     B  40 mm × 30 mm, wall 5 mm, opening 10 mm facing left at (140, 110) mm  floating
  disc    K  diameter 16 mm at (90, 50) mm  held at 2.5 V
  disc    K  diameter 16 mm at (60, 90) mm
  clip    P  20 Ω
  strip   T  (150, 20) (190, 20) (200, 40) mm, width 6 mm  negative
  hole    disc diameter 20 mm at (190, 140) mm
  slit    from (100, 140) mm to (100, 170) mm
  probe   a  at (120, 60) mm
  probe   b  at (125, 62) mm
  probe   c  at (140, 110) mm
  equipotentials 1 V to 5 V every 1 V`,
} as const;

export type SetupName = keyof typeof texts;
export const setupNames = Object.keys(texts) as SetupName[];

export function setupCalled(name: SetupName): Setup {
  const [setup] = setupsOf(texts[name]);
  if (setup === undefined) throw new Error(`no setup ${name}`);
  return setup;
}
