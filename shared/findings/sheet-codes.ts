import type { CatalogueEntry } from './entry.ts';

/** Findings made by the room `sheet`: what stands between the blocks. */
export const sheetCodes = {
  'fence-word': {
    severity: 'warning',
    meaning: 'A fence whose first word is nearly `electrodes`: it is not read as a block.',
  },
  'fence-unclosed': {
    severity: 'note',
    meaning:
      'A block without a closing fence: it runs to the end of the sheet, its list item or its quotation.',
  },
  'passage-kind': {
    severity: 'error',
    meaning: 'A passage for readers that are not known. Pupils do not get it.',
  },
  'passage-form': {
    severity: 'error',
    meaning: 'The opening line of a passage has more in it than can be read.',
  },
  'passage-unclosed': {
    severity: 'error',
    meaning: 'A passage that is not closed where it stands. Pupils do not get it.',
  },
  'passage-stray': { severity: 'error', meaning: 'Colons that close nothing.' },
  'passage-hidden': {
    severity: 'error',
    meaning: 'Colons of a passage where Markdown sees text, code or HTML: they open and close nothing.',
  },
  'insert-unclosed': { severity: 'error', meaning: 'An insert without its closing brace.' },
  'insert-form': { severity: 'error', meaning: 'An insert that cannot be read.' },
  'insert-head': { severity: 'error', meaning: 'An insert that begins with a word that is not known.' },
  'insert-alone': {
    severity: 'error',
    meaning: 'A table or figure inside a sentence: it stands in a paragraph of its own.',
  },
  'insert-place': {
    severity: 'warning',
    meaning: 'An insert where nothing can be filled in: the description of a picture.',
  },
  'insert-unknown': { severity: 'error', meaning: 'An insert names something that no setup has.' },
  'insert-ambiguous': { severity: 'error', meaning: 'An insert names something that several setups have.' },
  'insert-kind': {
    severity: 'error',
    meaning: 'An insert asks something of a name that it does not have: a row where a probe belongs.',
  },
  'insert-beyond': { severity: 'error', meaning: 'An insert asks for a place beyond the end of its row.' },
  'insert-later': {
    severity: 'note',
    meaning: 'A figure that is not printed yet; teachers see where it will stand.',
  },
  'told-in-question': {
    severity: 'note',
    meaning: 'A value told to everyone in a question that has marks.',
  },
  'marks-disagree': {
    severity: 'warning',
    meaning: 'The marks of a question and the points of its answer do not agree.',
  },
  'marks-no-points': {
    severity: 'note',
    meaning: 'A question has marks, its answer has no points to give them for.',
  },
  'mark-inside': {
    severity: 'warning',
    meaning: 'A point for a mark inside a line of an answer: points stand at the ends of lines.',
  },
  'mark-form': { severity: 'note', meaning: 'Marks written in words: a number alone is counted.' },
  'html-escaped': { severity: 'warning', meaning: 'HTML, which is printed as it is written.' },
  'comment-open': {
    severity: 'error',
    meaning: 'A comment that does not end in its paragraph: it would be printed.',
  },
  'comment-unclosed': {
    severity: 'warning',
    meaning: 'A comment that is never closed: what follows is left out.',
  },
  'comment-unknown': { severity: 'warning', meaning: 'A comment for Papervolt that it does not know.' },
  'allow-unused': { severity: 'warning', meaning: 'An allowance for a finding that is not made there.' },
  'allow-stop': {
    severity: 'warning',
    meaning: 'An allowance for a finding that says this is no pupil practical: it stays.',
  },
  'front-yaml': { severity: 'error', meaning: 'Front matter that is not YAML.' },
  'front-key': { severity: 'warning', meaning: 'A key of the front matter that is not known.' },
  'front-value': { severity: 'warning', meaning: 'A value of the front matter that cannot be taken.' },
} as const satisfies Record<string, CatalogueEntry>;

export type SheetCode = keyof typeof sheetCodes;
