/** Whether setups mean the same, however they are written. */
import type { TextEdit } from '../../findings/finding.ts';
import type { Setup } from '../../setup/setup.ts';
import type { Excerpt } from '../../text/excerpt.ts';
import { editedExcerpt, supposedFamily } from '../moving/supposed.ts';
import type { Site } from './site.ts';

/** Largest difference of positions that is none, mm. */
export const exact_mm = 1e-6;

/** True where the edits leave the setup of the block, and of all that are like it, as they are, and make no new finding. */
export function keepsMeaning(site: Site, edits: readonly TextEdit[], tolerance_mm = exact_mm): boolean {
  return keepsMeaningAs(site, editedExcerpt(site.block.excerpt, edits), tolerance_mm);
}

/** Likewise for the whole block written anew. */
export function keepsMeaningAs(
  { draft, number, block }: Site,
  excerpt: Excerpt,
  tolerance_mm = exact_mm,
): boolean {
  const supposed = supposedFamily(draft, number, excerpt);
  if (supposed === null) return false;
  const codes = (findings: readonly { readonly code: string }[]): readonly string[] =>
    findings.map(({ code }) => code);
  if (!fewer(codes(supposed.block.findings), codes(block.findings))) return false;
  return [...supposed.setups].every(([member, after]) => {
    const before = draft.setups[member];
    if (before === undefined || !fewer(codes(after.findings), codes(before.findings))) return false;
    return sameSetup(before, after, tolerance_mm);
  });
}

/** True where the first list has nothing that the second lacks. */
function fewer(after: readonly string[], before: readonly string[]): boolean {
  const left = [...before];
  return after.every((code) => {
    const at = left.indexOf(code);
    if (at >= 0) left.splice(at, 1);
    return at >= 0;
  });
}

/** Electrodes, probes and rows count by their names, in any order; metal and places as they lie on the paper. */
export function sameSetup(a: Setup, b: Setup, tolerance_mm = exact_mm): boolean {
  return alike(canonical(a), canonical(b), tolerance_mm);
}

function canonical(setup: Setup): unknown {
  const byName = <T extends { readonly name: string }>(list: readonly T[]): readonly T[] =>
    [...list].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const electrodes = byName(setup.electrodes);
  const { name, block, ...rest } = setup;
  return {
    ...rest,
    lost: [...setup.lost].sort(),
    // A conductor is told by the first of its electrodes: its number counts in the order written.
    electrodes: electrodes.map((electrode) => ({
      ...electrode,
      conductor:
        electrode.conductor === null
          ? null
          : electrodes.findIndex(({ conductor }) => conductor === electrode.conductor),
    })),
    probes: byName(setup.probes),
    rows: byName(setup.rows),
  };
}

/** What says where and how it is written, not what it means. */
const writing: ReadonlySet<string> = new Set(['span', 'findings', 'shape']);

function alike(a: unknown, b: unknown, tolerance: number): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= tolerance || a === b;
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return a === b;
  const keys = (of: object): readonly string[] => Object.keys(of).filter((key) => !writing.has(key));
  const [left, right] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  const names = keys(a);
  return (
    names.length === keys(b).length &&
    names.every((key) => right.has(key) && alike(left.get(key), right.get(key), tolerance))
  );
}
