/** The sections of a sheet, from a heading to the next one, of whatever depth, with their prose. */
import type { Sheet } from '../../sheet/sheet.ts';
import { proseIn } from '../prose/known.ts';
import type { Run } from '../prose/run.ts';

export interface Section {
  readonly heading: string;
  readonly from: number;
  /** The heading among them, cells of tables too. */
  readonly runs: readonly Run[];
}

const known = new WeakMap<Sheet, readonly Section[]>();

export function sectionsOf(sheet: Sheet): readonly Section[] {
  const made = known.get(sheet) ?? readSections(sheet);
  known.set(sheet, made);
  return made;
}

function readSections(sheet: Sheet): readonly Section[] {
  let runs: Run[] = [];
  const sections: Section[] = [{ heading: '', from: 0, runs }];
  for (const run of proseIn(sheet).runs) {
    if (run.kind === 'heading') {
      runs = [];
      sections.push({ heading: run.text, from: run.at(0), runs });
    }
    runs.push(run);
  }
  return sections;
}
