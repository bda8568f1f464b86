/** Letters for direct and alternating current that stand by themselves, as the house style has them. */
import { found, type WordRule } from './rule.ts';
import { fix } from './run.ts';

/** How a house writes direct current. */
export type CurrentStyle = 'd.c.' | 'DC';

const capitals = /(?<![\p{L}\p{N}.])([DAda])[Cc](?![\p{L}\p{N}])/gu;
const stops = /(?<![\p{L}\p{N}.])([DAda])\.[Cc]\.?(?![\p{L}\p{N}])/gu;
const behindValue = /\d[ \u00a0]?[kmµ]?[VA][ \u00a0]$/u;
const beforeNoun =
  /^[ \u00a0\n-](?:suppl|power|voltage|current|source|output|socket|terminal|range|setting|mode|meter|voltmeter|multimeter|circuit|side)/u;

/** Capitals elsewhere than behind a value or before what is supplied may be names of points. Said once for a run of text. */
export const currentLetters: WordRule = (run, { style, names }) => {
  const wanted = style['direct-current'];
  if (wanted === null) return [];
  const { text } = run;
  const changes = [...text.matchAll(wanted === 'DC' ? stops : capitals)].flatMap((match) => {
    const { 0: written, 1: letter = '', index } = match;
    const to = index + written.length;
    const sure = behindValue.test(text.slice(0, index)) || beforeNoun.test(text.slice(to, to + 12));
    if (names.has(written) || !(sure || /^[da]\.c\.$/u.test(written))) return [];
    const ends = wanted === 'DC' ? /^(?:\s*$|\s+\p{Lu})/u.test(text.slice(to)) : text.charAt(to) === '.';
    return [{ run, from: index, to, text: lettersOf(letter, wanted, ends && run.kind === 'paragraph') }];
  });
  const [first] = changes;
  if (first === undefined) return [];
  const menu = lettersOf(first.text.charAt(0), wanted, false);
  return [
    found('direct-current', first, {
      severity: 'warning',
      message: `The house style is ${menu}`,
      fixes: fix(`Write ${menu}${changes.length > 1 ? ' and so on' : ''}`, changes, false),
    }),
  ];
};

/** `ends`: a full stop of the sentence stands behind the letters, as their own or as one more. */
function lettersOf(letter: string, wanted: CurrentStyle, ends: boolean): string {
  if (wanted === 'DC') return `${letter.toUpperCase()}C${ends ? '.' : ''}`;
  return `${letter.toLowerCase()}.c${ends ? '' : '.'}`;
}
