/** Keys of the front matter and the values that some of them choose from. */
import { frontMatterKeys } from '../../sheet/front-matter.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { type Offer, offer } from './completion.ts';

export const keyHelp: Readonly<Record<string, string>> = {
  title: 'what the sheet is called',
  id: 'number or code of the sheet in the department',
  version: 'version of the text',
  date: 'year, month, day: 2026-03-12',
  author: 'who wrote it',
  school: 'name of the school',
  status: 'draft, reviewed, issued or withdrawn',
  course: 'course or unit that it belongs to',
  groups: 'how many groups work at a time',
  spares: 'how many more sets are laid out',
  minutes: 'how long the practical takes',
  print: 'paper of the print: A4 or Letter',
  language: 'en-GB or en-US',
  reviewed: 'date of the last review',
  'next-review': 'date of the next review',
  'risk-assessment': 'where the risk assessment is kept',
  kit: 'further things for each group: board 1, ruler 1',
  audience: 'the only readers that the sheet is for',
  safety: 'where the notes on safety are kept: kept-in "Laboratory notes"',
};

export const keyValues: Readonly<Record<string, readonly string[]>> = {
  status: ['draft', 'reviewed', 'issued', 'withdrawn'],
  print: ['A4', 'Letter'],
  language: ['en-GB', 'en-US'],
  audience: ['pupils', 'teachers', 'technicians'],
};

export function frontMatterOffers({ front, source }: Sheet, before: string): readonly Offer[] {
  const key = /^([a-z-]+):\s*[\p{L}\d-]*$/u.exec(before)?.[1];
  if (key === 'safety')
    return [offer('value', 'kept-in', 'another document', { text: 'kept-in "«Laboratory notes»"' })];
  if (key !== undefined) return (keyValues[key] ?? []).map((value) => offer('value', value, key));
  if (front.span === null || !/^[a-z-]*$/u.test(before)) return [];
  const written = source.text.slice(front.span.from, front.span.to);
  return frontMatterKeys
    .filter((one) => !new RegExp(`^${one}:`, 'mu').test(written))
    .map((one) => offer('key', one, keyHelp[one] ?? '', { text: `${one}: ` }));
}
