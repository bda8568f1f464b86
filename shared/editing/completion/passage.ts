/** Words of the line that opens a passage. */
import { type Offer, offer } from './completion.ts';

export const passageReaders: Readonly<Record<string, string>> = {
  pupils: 'pupils alone',
  teachers: 'teachers alone',
  technicians: 'technicians alone',
  safety: 'everyone, marked as a note on safety',
  answer: 'teachers; pupils get room to write',
  hint: 'teachers; pupils find it on a page of hints at the end',
  support: 'the copy for those who need more help',
  core: 'the usual copy',
  stretch: 'the copy for those who go further',
};

const rooms: readonly Offer[] = [
  offer('value', 'lines', 'so many ruled lines', { text: '«4» lines' }),
  offer('value', 'box', 'an empty box', { text: 'box «60 mm»' }),
];

/** `before`: what stands behind the colons. */
export function passageOffers(before: string): readonly Offer[] {
  if (/^answer\s+\S*$/u.test(before)) return rooms;
  if (!/^[a-z]*$/u.test(before)) return [];
  return Object.entries(passageReaders).map(([kind, readers]) => offer('word', kind, `for ${readers}`));
}
