/** Which reader gets the text of a passage, what others get in its place, and how it looks. Passages fail closed. */
import type { Audience } from '../../block/tree.ts';
import type { Passage, PassageKind } from '../sheet.ts';
import { type Html, html, nothing } from './html.ts';
import type { Tier } from './view.ts';

/** `space`: room to answer in; `hint`: the text, on the page of hints; `tier`: the text, in the copy of that tier. */
type Share = 'text' | 'space' | 'hint' | 'tier' | 'nothing';

const shares: Readonly<Record<PassageKind, Readonly<Record<Audience, Share>>>> = {
  pupils: { pupils: 'text', teachers: 'nothing', technicians: 'nothing' },
  teachers: { pupils: 'nothing', teachers: 'text', technicians: 'nothing' },
  technicians: { pupils: 'nothing', teachers: 'nothing', technicians: 'text' },
  safety: { pupils: 'text', teachers: 'text', technicians: 'text' },
  answer: { pupils: 'space', teachers: 'text', technicians: 'nothing' },
  hint: { pupils: 'hint', teachers: 'text', technicians: 'nothing' },
  support: { pupils: 'tier', teachers: 'text', technicians: 'nothing' },
  core: { pupils: 'tier', teachers: 'text', technicians: 'nothing' },
  stretch: { pupils: 'tier', teachers: 'text', technicians: 'nothing' },
  broken: { pupils: 'nothing', teachers: 'text', technicians: 'nothing' },
};

export type PassagePrint = 'text' | 'space' | 'hint' | 'nothing';

/** What a reader gets of a passage whose surroundings reach that reader. `tier`: whose copy this is, null for one without tiers. */
export function passagePrint({ kind }: Passage, audience: Audience, tier: Tier | null): PassagePrint {
  const share = shares[kind][audience];
  if (share !== 'tier') return share;
  return kind === tier ? 'text' : 'nothing';
}

export const tierMarks: Readonly<Record<Tier, string>> = { support: '●', core: '■', stretch: '▲' };

/** The text of a passage in its frame. */
export function framedPassage({ kind }: Passage, content: Html): Html {
  switch (kind) {
    case 'pupils':
    case 'teachers':
    case 'technicians':
      return html`<div class="passage plain">\n${content}</div>\n`;
    case 'safety':
      return framed('safety', 'Safety', content);
    case 'answer':
      return framed('answer', 'Answer', content);
    case 'hint':
      return framed('hint', 'Hint', content);
    case 'broken':
      return framed('broken', 'This passage is not closed or not known: pupils do not get it.', content);
    default:
      return framed('tier', tierMarks[kind], content);
  }
}

const mostLines = 24;
const tallestBox_mm = 220;

/** Room for a handwritten answer. */
export function answerSpace({ space }: Passage): Html {
  if (space.kind === 'box') {
    const height = Math.max(10, Math.min(space.height_mm, tallestBox_mm));
    return html`<div class="space" style="height:${height}mm"></div>\n`;
  }
  const count = Math.max(1, Math.min(Math.round(space.count), mostLines));
  return html`<div class="lines">${Array.from({ length: count }, () => html`<div></div>`)}</div>\n`;
}

/** The last page of a pupils' copy; nothing where there are no hints. */
export function hintPage(hints: readonly Html[]): Html {
  if (hints.length === 0) return nothing;
  const items = hints.map((hint) => html`<li>\n${hint}</li>\n`);
  return html`<section class="hints">\n<h2>Hints</h2>\n<ol>\n${items}</ol>\n</section>\n`;
}

function framed(name: string, word: string, content: Html): Html {
  return html`<div class="passage ${name}">\n<p class="name">${word}</p>\n${content}</div>\n`;
}
