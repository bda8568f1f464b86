/** What the front matter says of the risk assessment, of reviews, and of where the notes on safety are kept. */
import { type Finding, type Fix, finding } from '../../findings/finding.ts';
import type { FrontMatter } from '../../sheet/sheet.ts';
import type { Span } from '../../text/span.ts';
import { draftOpening } from './drafts.ts';
import type { Scene } from './hazard.ts';

export function reviewChecks(scene: Scene): readonly Finding[] {
  // What stands in a front matter that cannot be read is not known.
  const readable = !scene.sheet.findings.some(({ code }) => code === 'front-yaml');
  return [
    ...(readable ? riskAssessment(scene) : []),
    ...(reviewPast(scene) ?? reviewStale(scene) ?? (readable ? reviewMissing(scene) : [])),
    ...keptIn(scene),
    ...draftsLeft(scene),
  ];
}

function riskAssessment(scene: Scene): readonly Finding[] {
  const { sheet, language, text } = scene;
  if (sheet.front.riskAssessment !== null || referenced.test(text.whole)) return [];
  const american = language === 'en-US';
  return [
    finding('risk-assessment-missing', {
      span: headOf(scene),
      message: `No ${american ? 'hazard analysis or ' : ''}risk assessment is named: not for use until assessed.`,
      hints: [
        'Give its name and date in the front matter, or “to be assessed”.',
        american
          ? 'Whoever holds the duty where you work decides; follow district and state rules.'
          : 'Whoever holds the duty where you work (in the UK the employer) decides.',
      ],
      fixes: [lineInFront(scene, 'risk-assessment: to be assessed')],
    }),
  ];
}

/** A number of a risk assessment in the text does as well. */
const referenced =
  /\b(?:risk assessment|hazard analysis)\b[ :,]{1,3}(?:no\.? |number |ref(?:erence)?\.? |see )?(?:[a-z]{1,6}[- ]?)?\d|\bra[- ]?(?:[a-z]+[- ]?)?\d/u;

/** `2026-03-12`, or nothing that can be compared. */
function day(text: string | null): string | null {
  return /^\d{4}-\d\d-\d\d(?!\d)/u.exec(text ?? '')?.[0] ?? null;
}

function reviewPast(scene: Scene): readonly Finding[] | null {
  const next = day(scene.sheet.front.nextReview);
  const { today } = scene;
  if (next === null || today === null || next >= today) return null;
  return [
    finding('review-past', {
      span: valueAt(scene, 'next-review'),
      message: `The next review was due on ${next}.`,
      hints: ['Look at the notes on safety again, then set the dates of this review and of the next one.'],
    }),
  ];
}

function reviewStale(scene: Scene): readonly Finding[] | null {
  const { reviewMonths } = scene.department;
  const last = day(scene.sheet.front.reviewed);
  const { today } = scene;
  if (last === null || today === null || monthsLater(last, reviewMonths) >= today) return null;
  return [
    finding('review-stale', {
      span: valueAt(scene, 'reviewed'),
      message: `The last review, on ${last}, is more than ${reviewMonths} months old.`,
      hints: ['The period comes from whoever holds the duty where you work, by way of the department file.'],
    }),
  ];
}

function reviewMissing(scene: Scene): readonly Finding[] {
  const { front } = scene.sheet;
  if (front.nextReview !== null) return [];
  const from = day(front.reviewed) ?? scene.today;
  const next = from === null ? null : monthsLater(from, scene.department.reviewMonths);
  return [
    finding('review-missing', {
      span: headOf(scene),
      message: 'The front matter does not say when this sheet is reviewed next.',
      fixes: next === null ? [] : [lineInFront(scene, `next-review: ${next}`)],
      hints: ['`next-review: ` and a date; usually a year ahead, or sooner when kit, staff or rules change.'],
    }),
  ];
}

/** The same day some months later, or the last of its month. */
export function monthsLater(date: string, months: number): string {
  const [year = 0, month = 1, dayOfMonth = 1] = date.split('-').map(Number);
  const count = year * 12 + (month - 1) + months;
  const [y, m] = [Math.floor(count / 12), (count % 12) + 1];
  const leap = (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0;
  const last = m === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(m) ? 30 : 31;
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${y}-${two(m)}-${two(Math.min(dayOfMonth, last))}`;
}

function keptIn(scene: Scene): readonly Finding[] {
  const { safetyKeptIn } = scene.sheet.front;
  if (safetyKeptIn === null) return [];
  return [
    finding('notes-kept-in', {
      span: valueAt(scene, 'safety'),
      message: `The notes on safety are kept in “${safetyKeptIn}”, which is not read here: no note is reported as missing.`,
    }),
  ];
}

/** A draft that nobody has looked at, in a sheet that says it was looked at. */
function draftsLeft({ sheet, text }: Scene): readonly Finding[] {
  const { status } = sheet.front;
  if (status !== 'reviewed' && status !== 'issued') return [];
  return [...text.whole.matchAll(new RegExp(draftOpening.toLowerCase().replace('.', '\\.'), 'gu'))].map(
    (match) =>
      finding('draft-left', {
        span: text.spanOf(match.index, match.index + match[0].length),
        message: `This draft has not been adapted, but the sheet is ${status}.`,
        hints: ['Adapt the note to your risk assessment and take these words out.'],
      }),
  );
}

/** The opening of the front matter, or of the first block. */
function headOf({ sheet: { front, blocks, source } }: Scene): Span {
  if (front.span === null) return blocks[0]?.block.head.span ?? { from: 0, to: 0 };
  const { from } = front.span;
  const end = /\r\n|\n|\r|$/u.exec(source.text.slice(from))?.index ?? 0;
  return { from, to: from + end };
}

function valueAt(scene: Scene, key: string): Span {
  const { front, source } = scene.sheet;
  if (front.span === null) return headOf(scene);
  const line = new RegExp(`^${key}[ \\t]*:[ \\t]*([^\\r\\n]*?)[ \\t]*$`, 'mu').exec(
    source.text.slice(front.span.from, front.span.to),
  );
  if (line === null) return headOf(scene);
  const to = front.span.from + line.index + line[0].trimEnd().length;
  return { from: to - (line[1]?.length ?? 0), to };
}

function lineInFront({ sheet: { front, source } }: Scene, line: string): Fix {
  const eol = source.text.includes('\r\n') ? '\r\n' : '\n';
  const title = `Add “${line}”`;
  if (front.span === null) {
    const start = source.text.startsWith('\ufeff') ? 1 : 0;
    const text = `---${eol}${line}${eol}---${eol}${eol}`;
    return { title, edits: [{ span: { from: start, to: start }, text }], certain: false };
  }
  const at = lastLineOf(front, source.text);
  return { title, edits: [{ span: { from: at, to: at }, text: `${line}${eol}` }], certain: false };
}

/** The start of the line of hyphens that closes the front matter. */
function lastLineOf({ span }: FrontMatter, text: string): number {
  const end = (span?.to ?? 0) - 1;
  const before = text.slice(0, end).trimEnd();
  return Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1;
}
