/** Skeletons of sentences by their words and the names of the sheet: an edit makes those of the sentences that it touches. */
import { type Names, type Skeleton, skeletonOf } from './skeleton.ts';

/** Sentences kept: those of some long sheets. */
const mostKept = 20_000;

const known = new Map<string, Map<string, Skeleton>>();
let kept = 0;

export function knownSkeleton(text: string, names: Names): Skeleton {
  const key = keyOf(names);
  const made = ofNames(key).get(text);
  if (made !== undefined) return made;
  const skeleton = skeletonOf(text, names);
  if (kept === mostKept) forget();
  ofNames(key).set(text, skeleton);
  kept += 1;
  return skeleton;
}

function ofNames(key: string): Map<string, Skeleton> {
  const found = known.get(key) ?? new Map<string, Skeleton>();
  known.set(key, found);
  return found;
}

function forget(): void {
  known.clear();
  kept = 0;
}

const keys = new WeakMap<Names, string>();

function keyOf(names: Names): string {
  const key = keys.get(names) ?? [[...names.spots].sort().join(), [...names.rows].sort().join()].join(';');
  keys.set(names, key);
  return key;
}
