/** Words of the text that promise too much, tell of somebody's health, or crowd a board. */
import { type Finding, finding } from '../../findings/finding.ts';
import type { Scene } from './hazard.ts';
import { mentionsOf } from './reading/mentions.ts';

export function remarks(scene: Scene): readonly Finding[] {
  return [...claims(scene), ...medical(scene), ...groups(scene)];
}

interface Claim {
  readonly code: 'claim-car' | 'claim-point';
  readonly pattern: RegExp;
  readonly message: string;
  readonly hints: readonly string[];
}

const claimTable: readonly Claim[] = [
  {
    code: 'claim-car',
    pattern:
      /\b(?:safe(?:r|st|ly)?|secure|protected|unharmed)\b[^.;?\n]{0,40}\b(?:in|inside) (?:an? |the |your |their |any )?(?:closed |metal )*(?:cars?|vehicles?|bus(?:es)?|aeroplanes?|airplanes?|aircraft|trains?)\b|\b(?:cars?|vehicles?|bus(?:es)?|aeroplanes?|airplanes?|aircraft)\b[^.;?\n]{0,30}\b(?:(?:is|are) (?:a |the |an )?(?:very )?(?:safe\w*|good shelters?)|(?:protects?|keeps? (?:you|us|people|everyone|passengers) safe))/gu,
    message: 'This promises more than physics does.',
    hints: [
      'For example: “A closed metal body leads the current round those inside; the field inside is much weaker.”',
    ],
  },
  {
    code: 'claim-point',
    pattern:
      /\b(?:points?|spikes?|tips?)\b[^.;?\n]{0,40}\bprotects?\b|\b(?:points?|spikes?|tips?|(?:lightning )?(?:rods?|conductors?))\b[^.;?\n]{0,40}\b(?:drains?|empt(?:y|ies)|discharges?|neutrali[sz]es?|bleeds?)\b[^.;?\n]{0,30}\b(?:clouds?|thunderclouds?|storms?|thunderstorms?)\b/gu,
    message: 'A point neither protects nor drains a cloud.',
    hints: [
      'For example: “A lightning conductor receives the strike and leads it to earth; the field is strongest at its point.”',
    ],
  },
];

/** In questions and answers, too; what is denied or quoted is no claim. */
function claims({ text }: Scene): readonly Finding[] {
  return claimTable.flatMap(({ code, pattern, message, hints }) =>
    mentionsOf(text, pattern, 'said').map(({ span }) => finding(code, { span, message, hints })),
  );
}

/** A name with a capital, or one person of a class. */
function medical({ sheet, text }: Scene): readonly Finding[] {
  return [...text.whole.matchAll(needs)].flatMap(({ index, 0: words }) => {
    const before = text.whole.slice(Math.max(0, index - 60), index);
    const name = /\b(\p{L}{2,20}(?: \p{L}\.?)?(?: (?:in|of|from) [\w-]+)?),? $/u.exec(before)?.[1] ?? '';
    const start = before.lastIndexOf(name) + index - before.length;
    const written = sheet.source.text.slice(text.spanOf(start, index).from);
    if (!oneOfClass.test(before) && !isName(written, name, text.whole, start)) return [];
    return [
      finding('medical-details', {
        span: text.spanOf(start, index + words.length),
        message:
          'This tells of the health of somebody who can be known from it. It does not belong in a sheet.',
        hints: ['Keep it where your school keeps such notes, and write the precaution here for everyone.'],
      }),
    ];
  });
}

const needs =
  /(?<= )(?:has|is|wears|suffers from) (?:an? |the )?(?:severe |bad |nut |heart )*(?:allerg(?:y|ic|ies)(?: to \w+)?|asthma(?:tic)?|epilep(?:sy|tic)|diabet(?:es|ic)|pacemaker|heart condition|hearing aid|insulin pump|implant)\b/gu;
const oneOfClass =
  /\b(?:one|a|this|that) (?:pupil|student|girl|boy|member)s? (?:in|of|from) (?:[\w-]+ ){0,3}?(?:class|set|group|form|year|[\w-]*\d[\w-]*) $|\b(?:one|this|that) (?:pupil|student|girl|boy) (?:in|of|from) \S+ $/u;

/** Written with a capital where a small letter would stand. */
function isName(source: string, word: string, whole: string, at: number): boolean {
  if (
    /^(?:nobody|everybody|everyone|someone|somebody|anyone|anybody|who|he|she|it|they|pupil|student|teacher|person|wheat|flour|semolina|oil|castor oil|latex|this|that|which|there)\b/u.test(
      word,
    )
  )
    return false;
  const capital = /^\p{Lu}\p{Ll}/u.test(source);
  const opens = at === 0 || /[\n|.!?:] ?$/u.test(whole.slice(Math.max(0, at - 2), at));
  return capital && (!opens || !common.has(word));
}

const common = new Set(['peanut', 'nuts', 'gluten', 'rosin', 'nickel', 'anaphylaxis', 'somebody', 'nobody']);

function groups({ text }: Scene): readonly Finding[] {
  const pattern =
    /\b(?:groups?|teams?|sets?) of (?:up to |about |at least )?(?:\w+ (?:to|or|-) )?(four|five|six|seven|eight|[4-9]|1\d)\b(?! ?(?:mm|cm|v|m|readings?|cells?|lines?|dots?|points?|values?|leads?|electrodes?|questions?|data|results?|measurements?))/gu;
  return mentionsOf(text, pattern, 'done').map(({ span }) =>
    finding('group-size', {
      span,
      message: 'More than three at one board crowd it: somebody reaches over points and leads.',
      hints: ['Pairs see and do most.'],
    }),
  );
}
