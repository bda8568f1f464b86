/**
 * Where in a sheet something is said, and of which setups: those that the sentence names, else the one of the heading, else the one
 * whose block or figures stand before it in the section, else all.
 */
import type { Setup } from '../../setup/setup.ts';
import type { InsertHead, Reference, Sheet } from '../../sheet/sheet.ts';
import { proseIn } from '../prose/known.ts';
import type { ProseTable, Run } from '../prose/run.ts';
import type { Subject } from '../rule.ts';
import { type Sentence, sentencesOf } from './sentences.ts';
import { changesSetup, isClaim, isDenied, isOwn, isQuoted } from './stance.ts';

export interface Said extends Sentence {
  /** That the sentence can be about; one, or all that it may mean. */
  readonly setups: readonly Setup[];
}

/** From a heading to the next one, of whatever depth. */
interface Section {
  readonly heading: string;
  readonly from: number;
  readonly runs: Run[];
}

type Interest = (text: string) => boolean;

/** Sentences of interest that say how things are with the setup as it stands. */
export function saidIn(subject: Subject, interests: Interest): readonly Said[] {
  return sentencesIn(
    subject,
    interests,
    (sentence, section) => isClaim(sentence.text) && !isAfterChange(subject.sheet, section, sentence),
  );
}

/** Those too that ask, suppose or give an example. */
export function writtenIn(subject: Subject, interests: Interest): readonly Said[] {
  return sentencesIn(subject, interests, ({ text }) => isOwn(text));
}

function sentencesIn(
  subject: Subject,
  interests: Interest,
  admits: (sentence: Sentence, section: Section) => boolean,
): readonly Said[] {
  const { sheet, setups } = subject;
  if (setups.length === 0) return [];
  return sectionsOf(sheet).flatMap((section) => {
    const found: Said[] = [];
    for (const run of section.runs) {
      if (run.kind === 'cell' || !interests(run.text)) continue;
      for (const sentence of sentencesOf(run)) {
        if (!interests(sentence.text) || !admits(sentence, section)) continue;
        found.push({
          ...sentence,
          setups: setupsMeant(subject, section, run.at(sentence.from), sentence.text),
        });
      }
    }
    return found;
  });
}

/** Where in a sentence something is denied or put into somebody's mouth. */
export function holdsAt({ run, from, text }: Sentence, index: number): boolean {
  return !isDenied(text.slice(0, index)) && !isQuoted(run.text, from + index);
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

const known = new WeakMap<Sheet, readonly Section[]>();

function sectionsOf(sheet: Sheet): readonly Section[] {
  const made = known.get(sheet) ?? readSections(sheet);
  known.set(sheet, made);
  return made;
}

function readSections(sheet: Sheet): readonly Section[] {
  const sections: Section[] = [{ heading: '', from: 0, runs: [] }];
  for (const run of proseIn(sheet).runs) {
    if (run.kind === 'heading') sections.push({ heading: run.text, from: run.at(0), runs: [] });
    sections.at(-1)?.runs.push(run);
  }
  return sections;
}

/** The apparatus has been changed since the last block or heading: what is said now may hold for another state. */
function isAfterChange(sheet: Sheet, { runs, from }: Section, { run, from: index }: Sentence): boolean {
  const at = run.at(index);
  const since = sheet.blocks
    .map(({ block }) => block.excerpt.span.from)
    .filter((start) => start < at && start > from)
    .at(-1);
  return runs.some((earlier) => {
    if (earlier === run) return changesSetup(run.text.slice(0, index));
    const start = earlier.at(0);
    return start < at && start > (since ?? -1) && changesSetup(earlier.text);
  });
}

function setupsMeant(
  { sheet, setups }: Subject,
  section: Section,
  at: number,
  text: string,
): readonly Setup[] {
  if (setups.length < 2) return setups;
  const named = setups.filter(({ name }) => isNamed(text, name));
  if (named.length > 0) return named.length === 1 ? named : setups;
  const inHeading = setups.filter(({ name }) => isNamed(section.heading, name));
  if (inHeading.length === 1) return inHeading;
  const shown = new Set([...blocksIn(sheet, section, at), ...figuresIn(sheet, setups, section, at)]);
  const before = setups.filter(({ name }) => shown.has(name));
  return before.length === 1 ? before : setups;
}

/** Names of setups are often plain words: only what calls it a set-up, or nothing but its name, names it for certain. */
function isNamed(text: string, name: string): boolean {
  if (name === 'setup' || !text.toLowerCase().includes(name.toLowerCase())) return false;
  const plain = name.replace(/-/gu, '\\-');
  const kind = '(?:setup|set-up|arrangement|block|case)';
  const said = `^\\W*${plain}\\W*$|^${plain}:|\\b${kind} [“‘"]?${plain}(?![\\p{L}\\p{N}-])|(?<![\\p{L}\\p{N}-])${plain}[”’"]? ${kind}\\b`;
  return new RegExp(said, 'iu').test(text);
}

function blocksIn(sheet: Sheet, { from }: Section, at: number): readonly string[] {
  return sheet.blocks.flatMap(({ block }) => {
    const { span } = block.excerpt;
    return span.from >= from && span.from < at ? [block.head.name?.text ?? 'setup'] : [];
  });
}

function figuresIn(sheet: Sheet, setups: readonly Setup[], { from }: Section, at: number): readonly string[] {
  return sheet.inserts
    .filter(({ span }) => span.from >= from && span.from < at)
    .flatMap(({ head }) => referencesIn(head))
    .flatMap(({ setup, name }) => {
      if (setup !== null) return [setup];
      if (setups.some((one) => one.name === name)) return [name];
      const owners = setups.filter(({ probes, rows }) =>
        [...probes, ...rows].some((one) => one.name === name),
      );
      return owners.map((owner) => owner.name);
    });
}

function referencesIn(head: InsertHead): readonly Reference[] {
  switch (head.kind) {
    case 'reading':
    case 'range':
      return [head.of];
    case 'difference':
      return [head.from, head.to];
    case 'along':
    case 'gradient':
    case 'mean strength':
      return [head.row];
    case 'current':
    case 'resistance':
      return head.of === null ? [] : [head.of];
    case 'readings':
      return head.rows;
    case 'drawing':
      return head.setup === null ? [] : [head.setup];
    case 'later':
      return head.names;
    default:
      return [];
  }
}
