/** The frame of a printed sheet: the document, its head with title and reader, its foot. */
import type { Audience } from '../../block/tree.ts';
import type { FrontMatter } from '../sheet.ts';
import { type Html, html, isNothing, joined, nothing, trusted } from './html.ts';
import { tierMarks } from './passages.ts';
import { stylesheet } from './stylesheet.ts';
import type { Tier } from './view.ts';

export interface Frame {
  readonly front: FrontMatter;
  readonly audience: Audience;
  readonly tier: Tier | null;
  /** Plain text, for the window and the foot. */
  readonly title: string;
  /** As it stands on the sheet. */
  readonly heading: Html;
}

export function document(frame: Frame, body: Html): string {
  const { front, title } = frame;
  const style = trusted(stylesheet({ paper: front.print, foot: footText(frame) }));
  return html`<!doctype html>
<html lang="${front.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} – ${readerWords[frame.audience]}</title>
<style>
${style}</style>
</head>
<body class="${frame.audience}">
<div class="spine" aria-hidden="true"></div>
${notches(frame.audience)}${head(frame)}<main>
${body}</main>
</body>
</html>
`.markup;
}

export const readerWords: Readonly<Record<Audience, string>> = {
  pupils: 'Pupils',
  teachers: 'Teachers',
  technicians: 'Technicians',
};

function head(frame: Frame): Html {
  const { front, audience, tier } = frame;
  const labels = [front.school, front.course, ...version(front, audience)].filter((label) => label !== null);
  const mark = tier === null ? '' : ` ${tierMarks[tier]}`;
  return html`<header>
<div class="label"><div>${labels.map((label) => html`<span>${label}</span>`)}</div><span class="reader">${readerWords[audience]}${mark}</span></div>
<h1>${frame.heading}</h1>
${audience === 'pupils' ? fields : [facts(front), duty(front.language)]}</header>
`;
}

/** Pupils are told of the state only where the sheet is not to be used as it is. */
function version({ id, version, date, status }: FrontMatter, audience: Audience): readonly (string | null)[] {
  const unfit = status === 'draft' || status === 'withdrawn';
  const state = unfit || audience !== 'pupils' ? status : null;
  return [id, version === null ? null : `version ${version}`, date, state];
}

const fields = html`<div class="fields"><span>Name <i></i></span><span>Class <i></i></span><span>Date <i></i></span></div>\n`;

/** What a department wants to know of a sheet: short facts two by two, long ones below. */
function facts(front: FrontMatter): Html {
  const { groups, spares, minutes, kit } = front;
  const short = [
    fact('Author', front.author),
    fact('Time', minutes === null ? null : `${minutes}\u00a0min`),
    fact('Groups', groups === null ? null : `${groups}${spares === null ? '' : ` and ${spares} spare`}`),
    fact('Reviewed', front.reviewed),
    fact('Next review', front.nextReview),
  ];
  const long = [
    fact(
      'Kit',
      kit.length === 0 ? null : kit.map(({ item, count }) => `${count} × ${item}`).join(', '),
      'wide',
    ),
    fact('Risk assessment', front.riskAssessment, 'wide'),
    fact('Safety notes', front.safetyKeptIn === null ? null : `kept in ${front.safetyKeptIn}`, 'wide'),
  ];
  const known = joined([...short, ...long]);
  return isNothing(known) ? nothing : html`<dl class="facts">\n${known}</dl>\n`;
}

function fact(name: string, value: string | null, width: 'short' | 'wide' = 'short'): Html {
  return value === null
    ? nothing
    : html`<dt${width === 'wide' ? html` class="wide"` : null}>${name}</dt><dd class="${width}">${value}</dd>\n`;
}

/** None, one or two corner notches: a stack of sheets can be told apart at its edge. */
function notches(audience: Audience): Html {
  const count = { pupils: 0, teachers: 1, technicians: 2 }[audience];
  if (count === 0) return nothing;
  const marks = Array.from(
    { length: count },
    (_, i) => html`<path d="M5 ${i * 5} V${i * 5 + 4} L1 ${i * 5 + 2} Z" fill="#1C1C1C"/>`,
  );
  return html`<div class="notches" aria-hidden="true"><svg width="5mm" height="9mm" viewBox="0 0 5 9">${marks}</svg></div>\n`;
}

/** Letters that the foot has room for beside the page number; the name of a sheet is cut to fit. */
const footRoom = 82;
const leastName = 12;

function footText({ front, audience, title }: Frame): string {
  const rest = [
    front.version === null ? null : `version ${shortened(front.version, leastName)}`,
    front.date === null ? null : shortened(front.date, leastName),
    readerWords[audience],
    'printed copies may be out of date',
  ]
    .filter((part) => part !== null)
    .join(' · ');
  return `${shortened(front.id ?? title, Math.max(leastName, footRoom - 3 - rest.length))} · ${rest}`;
}

function shortened(name: string, most: number): string {
  const letters = [...name];
  return letters.length <= most ? name : `${letters.slice(0, most - 1).join('')}…`;
}

/** Said at the head of what staff get, so that no page holds it alone. No finding is no clearance. */
function duty(language: FrontMatter['language']): Html {
  const [record, rules] =
    language === 'en-US'
      ? [
          'the hazard analysis or risk assessment',
          'District and state rules and those of whoever holds the duty where you work',
        ]
      : [
          'the risk assessment',
          'The rules of whoever holds the duty where you work (in the UK the employer)',
        ];
  return html`<p class="duty">The safety notes here remind whoever writes ${record}: this list is not complete, and the sheet is not for use until assessed. ${rules}, the makers’ instructions and the local electrical code come first; where they are silent, ask: these notes are not permission.</p>\n`;
}
