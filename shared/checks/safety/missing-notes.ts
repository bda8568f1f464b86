/** Notes that sheets with such hazards usually carry, and this one does not: one finding a hazard, with drafts to adapt. */
import type { Audience } from '../../block/tree.ts';
import { type Finding, type Fix, finding } from '../../findings/finding.ts';
import type { Span } from '../../text/span.ts';
import { type Drafts, draftsFor } from './drafts.ts';
import type { Cause, Hazard, Note, Scene, Serves } from './hazard.ts';
import { hazards } from './hazards/index.ts';
import type { Piece } from './reading/safety-text.ts';
import { piecesSaying } from './reading/sayings.ts';

interface Missing {
  readonly note: Note;
  /** Who has to see it. */
  readonly reader: Audience;
  /** Where it stands for others only. */
  readonly elsewhere: Piece | null;
}

interface Lacking {
  readonly hazard: Hazard;
  readonly causes: readonly Cause[];
  readonly missing: readonly Missing[];
}

export function missingNotes(scene: Scene): readonly Finding[] {
  if (scene.sheet.front.safetyKeptIn !== null) return [];
  const lacking = hazards.flatMap((hazard): readonly Lacking[] => {
    const causes = hazard.causes(scene);
    const missing = causes.length === 0 ? [] : hazard.notes.flatMap((note) => lackOf(note, causes, scene));
    return missing.length === 0 ? [] : [{ hazard, causes, missing }];
  });
  if (lacking.length === 0) return [];
  const drafts = draftsFor(scene);
  const notes = withoutTwins(lacking.flatMap(({ missing }) => missing.map(({ note }) => note)));
  const every: readonly Fix[] =
    notes.length < 2 ? [] : [fixOf(`Add drafts of all ${notes.length} missing notes`, notes, drafts)];
  const told = new Set<number>();
  return lacking.map((one) => {
    const span = drafts.place ?? placeOf(one.causes);
    const first = !told.has(span.from);
    told.add(span.from);
    return findingOf(one, { scene, drafts, span, every: first ? every : [] });
  });
}

function lackOf(note: Note, causes: readonly Cause[], scene: Scene): readonly Missing[] {
  if (note.needed?.(scene) === false) return [];
  // A list for technicians is no place for what is done at the bench.
  if (note.serves === 'bench' && scene.sheet.front.audience === 'technicians') return [];
  const reader = readerOf(note.serves, causes);
  const pieces = piecesSaying(scene.text, note.said);
  if (pieces.some(({ readers }) => readers.includes(reader))) return [];
  return [{ note, reader, elsewhere: pieces[0] ?? null }];
}

const wanted: Readonly<Record<Serves, readonly Audience[]>> = {
  bench: ['pupils', 'technicians', 'teachers'],
  preparation: ['technicians', 'teachers', 'pupils'],
  operator: ['teachers', 'technicians', 'pupils'],
};

/** The first of those whom the note serves who reads of the hazard. */
function readerOf(serves: Serves, causes: readonly Cause[]): Audience {
  const readers = causes.flatMap((cause) => cause.readers);
  return wanted[serves].find((reader) => readers.includes(reader)) ?? 'teachers';
}

/** Two hazards may ask for the same note. */
function withoutTwins(notes: readonly Note[]): readonly Note[] {
  const drafts = new Set<string>();
  return notes.filter(({ draft }) => !drafts.has(draft) && drafts.add(draft));
}

function placeOf(causes: readonly Cause[]): Span {
  const [first] = causes;
  if (first === undefined) throw new Error('a hazard without a cause');
  return first.span;
}

const readerWords: Readonly<Record<Audience, string>> = {
  pupils: 'pupils',
  teachers: 'teachers',
  technicians: 'technicians',
};

function findingOf(
  { hazard: { code, about, why }, causes, missing }: Lacking,
  { scene, drafts, span, every }: { scene: Scene; drafts: Drafts; span: Span; every: readonly Fix[] },
): Finding {
  const one = missing.length === 1;
  const list = missing.map(({ note }) => note.name).join('; ');
  const message = `${one ? 'A note' : 'Notes'} on ${about} that such sheets usually carry ${one ? 'is' : 'are'} missing: ${list}.`;
  const hidden = missing.filter(({ elsewhere }) => elsewhere !== null);
  const pupils = scene.language === 'en-US' ? 'students' : 'pupils';
  const who = (reader: Audience): string => (reader === 'pupils' ? pupils : readerWords[reader]);
  return finding(code, {
    span,
    severity: missing.some(({ note }) => note.severity === 'warning') ? 'warning' : 'note',
    message,
    hints: [
      why,
      ...hidden.map(({ note, reader }) => `“${note.name}” stands only where ${who(reader)} do not see it.`),
      ...serving(missing, who),
    ],
    related: [
      ...causes
        .slice(0, 3)
        .filter((cause) => cause.span.from !== span.from)
        .map(({ span: at, message: said }) => ({ span: at, message: said })),
      ...hidden.map(({ reader, elsewhere }) => ({
        span: scene.text.spanOf(elsewhere?.from ?? 0, elsewhere?.to ?? 1),
        message: `This does not reach ${who(reader)}.`,
      })),
    ],
    fixes: [...missing.map(({ note }) => fixOf(`Add a draft: ${note.name}`, [note], drafts)), ...every],
  });
}

/** Whom the notes are for, where that is not the pupils alone. */
function serving(missing: readonly Missing[], who: (reader: Audience) => string): readonly string[] {
  const readers = [...new Set(missing.map(({ reader }) => reader))];
  const other = readers.filter((reader) => reader !== 'pupils');
  if (other.length === 0) return [];
  if (readers.length === 1) return [`It is ${who(readers[0] ?? 'teachers')} who need to see this.`];
  return other.map((reader) => {
    const names = missing.filter((one) => one.reader === reader).map(({ note }) => `“${note.name}”`);
    return `It is ${who(reader)} who need to see ${names.join(' and ')}.`;
  });
}

function fixOf(title: string, notes: readonly Note[], drafts: Drafts): Fix {
  return { title, edits: drafts.add(notes), certain: false };
}
