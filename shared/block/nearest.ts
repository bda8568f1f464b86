/** Finds the word that a misspelt one was meant to be. */

/** The candidates within a small edit distance, the nearest first; ties keep the order given. At most three. */
export function nearest(written: string, candidates: readonly string[]): readonly string[] {
  const word = written.toLowerCase();
  if (word.length > longest) return [];
  const allowed = word.length <= 2 ? 0 : word.length <= 4 ? 1 : word.length <= 8 ? 2 : 3;
  return candidates
    .map((candidate) => ({ candidate, distance: editDistance(word, candidate.toLowerCase()) }))
    .filter(({ distance }) => distance <= allowed)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 3)
    .map(({ candidate }) => candidate);
}

/** Longer words are not compared: work stays bounded. */
const longest = 32;

/** Letters added, dropped, replaced, or two neighbours swapped (optimal string alignment). */
function editDistance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 3) return 99;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(at(last, j) + 1, at(row, j - 1) + 1, at(last, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, at(before, j - 2) + 1);
      }
      row.push(least);
    }
    before = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? 99;
}
