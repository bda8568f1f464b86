/**
 * Remembers runs of prose in which no rule finds anything, so that an edit costs the rules of one paragraph. Whether a run is quiet
 * depends on its words and on what sheet and department say, never on its place in the file: what is remembered changes no result.
 */
import type { Setting } from './rule.ts';
import type { Run } from './run.ts';

/** Characters kept: those of some dozen long sheets. */
const mostKept = 4_000_000;

const quiet = new Map<string, Set<string>>();
let kept = 0;

/** The quiet runs of sheets that say the same about themselves. */
export function quietRuns({ american, saysLanguage, style, emf, names }: Setting): {
  readonly has: (run: Run) => boolean;
  readonly add: (run: Run) => void;
} {
  const setting = JSON.stringify([american, saysLanguage, style, emf, ...[...names].sort()]);
  const known = quiet.get(setting) ?? new Set();
  return {
    has: (run) => known.has(keyOf(run)),
    add(run) {
      const key = keyOf(run);
      if (kept + key.length > mostKept) {
        quiet.clear();
        kept = 0;
      }
      quiet.set(setting, known.add(key));
      kept += key.length;
    },
  };
}

const keyOf = ({ kind, text }: Run): string => `${kind} ${text}`;
