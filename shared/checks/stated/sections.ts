/** The sections of a sheet, from a heading to the next one, of whatever depth, with their prose and tables. */
import type { Setup } from '../../setup/setup.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { proseIn } from '../prose/known.ts';
import type { ProseTable, Run } from '../prose/run.ts';
import type { Subject } from '../rule.ts';
import { setupsMeant } from './scope.ts';

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

export interface TablePlace {
  readonly table: ProseTable;
  /** Heading of the section and the paragraph before the table, for what they say about it. */
  readonly heading: string;
  readonly before: string;
  readonly at: number;
  readonly setups: readonly Setup[];
}

export function tablesIn(subject: Subject): readonly TablePlace[] {
  const { sheet } = subject;
  return proseIn(sheet).tables.flatMap((table) => {
    const [first] = table.head;
    if (first === undefined) return [];
    const at = first.at(0);
    const section = sectionsOf(sheet)
      .filter(({ from }) => from <= at)
      .at(-1);
    const before = section?.runs.filter((run) => run.kind !== 'cell' && run.at(0) < at).at(-1)?.text ?? '';
    const heading = section?.heading ?? '';
    const setups = section === undefined ? subject.setups : setupsMeant(subject, section, at, before);
    return [{ table, heading, before, at, setups }];
  });
}
