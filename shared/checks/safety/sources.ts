/** Stops for what the text alone tells: sources of voltage and places that are none for pupils. */
import { type Finding, finding } from '../../findings/finding.ts';
import type { SafetyCode } from '../../findings/safety-codes.ts';
import { printQuantity } from '../../quantity/print.ts';
import type { Scene } from './hazard.ts';
import { ehtCauses, ehtWords } from './hazards/demonstration.ts';
import { type Mention, mentionsOf, type Way } from './reading/mentions.ts';

interface Stop {
  readonly code: SafetyCode;
  readonly pattern: RegExp;
  readonly way: Way;
  readonly message: string;
  readonly hints: readonly string[];
  /** Words of the sentence without which nothing is meant. */
  readonly only?: RegExp;
}

const act = String.raw`\b(?:use|using|connect\w*|join\w*|attach\w*|appl(?:y|ies|ied|ying)|wire[ds]?|clip\w*|plug\w*|put|hook\w*|link\w*|feed|fed|run|touch\w*|with|from|driv\w+|power\w*|build|take|set up|discharg\w*|charg\w*)\b`;
const target = String.raw`\b(?:electrodes?|plates?|bars?|rings?|discs?|disks?|spikes?|clips?|paper|copper|foils?)\b`;
const near = String.raw`[^.;?\n]{0,80}?`;
const unmade = String.raw`\b(?:induction coils?|ignition coils?|ruhmkorff coils?|tesla coils?|spark coils?|flyback transformers?|neon[- ]sign transformers?|line[- ]output transformers?|microwave(?:[- ]oven)? (?:transformers?|capacitors?|power supply)|stun guns?|tasers?|electric[- ]fence (?:units?|energi[sz]ers?)|(?:insect|bug|fly) (?:zappers?|killers?)|(?:old )?(?:television|tv|crt|monitor) (?:transformers?|power supply|high[- ]voltage|eht))\b`;
const oven = String.raw`(?:in|into|inside|with) (?:an? |the |your )?(?:\w+ )?microwave(?: ovens?)?(?! (?:trans\w+|beams?|regions?|ranges?|fields?|parts?|sources?|receivers?|spectr\w+))`;

const stops: readonly Stop[] = [
  {
    code: 'high-voltage-source',
    pattern: new RegExp(`${act}${near}${unmade}|${unmade}${near}${target}`, 'gu'),
    way: 'done',
    message: 'A source of high voltage that was not made for schools can kill.',
    hints: [
      'Salvaged transformers and capacitors, ignition and induction coils have no limit that holds. A cell of 1.5 V does here.',
    ],
  },
  {
    code: 'mains-electrodes',
    pattern: new RegExp(
      `${act}${near}${target}${near}\\b(?:to|into|from|across|at|with) (?:the |an? )?(?:mains|(?:power |household )?outlet|(?:(?:230|240|120|110) ?v )?wall (?:outlet|socket)|(?:230|240|120|110) ?v\\b)|` +
        `\\bappl\\w+ (?:the )?(?:mains|line voltage|230 ?v|240 ?v|120 ?v|110 ?v)|` +
        `\\b(?:mains|line) (?:voltage|supply|current|a\\.?c\\.?) (?:is |are )?(?:applied |connected |put |joined )?(?:on|across|to) (?:the |both |two )*${target}|` +
        `\\b(?:mains|wall outlet) as (?:the |a )?(?:source|supply)`,
      'gu',
    ),
    way: 'done',
    message: 'The mains on electrodes kills.',
    hints: ['A cell of 1.5 V gives the same lines.'],
  },
  {
    code: 'microwave-oven',
    pattern: new RegExp(
      `\\b(?:put|plac\\w+|heat\\w*|run|switch\\w*|light\\w*|make|making|start\\w*|spark\\w*|arc\\w*|demonstrat\\w+|show\\w*|try|lay|warm\\w*|dry|plasma|grapes?)\\b${near}\\b${oven}`,
      'gu',
    ),
    way: 'done',
    message:
      'A microwave oven is no apparatus: sparks and plasma in it mean fire, shock and radiation that leaks.',
    hints: ['Show screening with the hollow ring on the paper.'],
  },
  {
    code: 'storm-outdoors',
    pattern:
      /\b(?:fly|flying|launch\w*|raise|send up)\b[^.;?\n]{0,30}\b(?:kites?|balloons?|drones?)\b[^.;?\n]{0,60}\b(?:thunder\w*|storms?|lightning|clouds?)\b|\b(?:thunder\w*|storms?|lightning)\b[^.;?\n]{0,60}\b(?:go|stand|walk|measure|take the|carry|work)\b[^.;?\n]{0,30}\b(?:outdoors|outside|roof|field|open)\b|\b(?:go|stand|walk|measure|carry|work|set up)\b[^.;?\n]{0,50}\b(?:outdoors|outside|roof|open air|playing field)\b[^.;?\n]{0,50}\b(?:thunder\w*|storms?|lightning)\b/gu,
    way: 'done',
    message: 'Nothing is done outdoors when there is thunder.',
    hints: ['Lightning is explained, not sought. Work outdoors ends at the first thunder.'],
  },
  {
    code: 'ht-supply',
    pattern:
      /(?<![\w.])(?:h\.t\.|ht|high[- ]tension) (?:d\.?c\.? )?(?:power )?(?:suppl(?:y|ies)|units?|packs?|batter(?:y|ies)|terminals?)\b/gu,
    way: 'used',
    message: 'A supply of high tension can kill: hundreds of volts, and a current that nothing limits.',
    hints: ['It is never for bare electrodes. This practical needs 1.5 V to 6 V.'],
  },
  {
    code: 'cell-button',
    pattern: /\b(?:button|coin)[- ](?:cells?|batter(?:y|ies))\b|\b(?:cr|lr|sr|ag)\d{2,4}\b/gu,
    way: 'used',
    message: 'Button cells burn from inside when they are swallowed: none for pupils.',
    hints: ['Take a zinc-carbon cell of size AA. Swallowed: emergency services at once.'],
  },
];

export function sourceStops(scene: Scene): readonly Finding[] {
  const { text } = scene;
  return [
    ...stops.flatMap(({ code, pattern, way, message, hints }) =>
      mentionsOf(text, pattern, way).map(({ span }) => finding(code, { span, message, hints })),
    ),
    ...buttonCells(scene),
    ...ehtStops(scene),
    ...ratings(scene),
  ];
}

function buttonCells({ setups }: Scene): readonly Finding[] {
  const { message = '', hints = [] } = stops.find(({ code }) => code === 'cell-button') ?? {};
  const seen = new Set<number>();
  return setups.flatMap(({ supply }) => {
    if (supply === null || !/^(?:button|coin|(?:cr|lr|sr|ag)-?\d)/iu.test(supply.cellSize ?? '')) return [];
    if (seen.has(supply.span.from)) return [];
    seen.add(supply.span.from);
    return [finding('cell-button', { span: supply.span, message, hints })];
  });
}

const milliamperes: Readonly<Record<string, number>> = { a: 1000, ma: 1, µa: 1e-3, μa: 1e-3, ua: 1e-3 };

/** A demonstration with kilovolts: on paper a stop, elsewhere one where its limit is not told or too high. */
function ehtStops(scene: Scene): readonly Finding[] {
  const mentions = mentionsOf(scene.text, ehtWords);
  const onPaper = mentions.filter(({ sentence }) =>
    /\b(?:conduct\w+|graphite|resistive|carbon) (?:paper|sheet)\b|\b(?:on|to|across) the paper\b/u.test(
      sentence,
    ),
  );
  if (onPaper.length > 0) {
    return onPaper.map(({ span }) =>
      finding('eht-on-paper', {
        span,
        message: 'Kilovolts on conducting paper: pupils hold the probe. This is not a practical for them.',
        hints: ['This practical needs 1.5 V to 6 V.'],
      }),
    );
  }
  const [first] = mentions;
  if (first === undefined || ehtCauses(scene).length === 0) return [];
  const stated = statedLimits(scene);
  const { value, source } = scene.department.limits['limited-current'];
  if (stated.length === 0) {
    return [
      finding('eht-limit', {
        span: first.span,
        message: `The limit of the current of this supply is not stated: only one of ${value} mA or less, by its own construction, is for schools.`,
        hints: [`Say the limit that is written on the supply. ${value} mA: ${source}.`],
      }),
    ];
  }
  const high = stated.filter(({ mA }) => mA > value);
  return high.map(({ mA, mention }) =>
    finding('eht-limit', {
      span: mention.span,
      message: `A limit of ${printQuantity(mA / 1000, 'current')} at kilovolts is none: above ${value} mA this is not for schools.`,
      hints: [`${value} mA: ${source}.`],
      related: [{ span: first.span, message: 'The supply stands here.' }],
    }),
  );
}

interface Stated {
  readonly mA: number;
  readonly mention: Pick<Mention, 'span'>;
}

/** Currents that the text gives as the limit of a supply. */
function statedLimits({ text }: Scene): readonly Stated[] {
  return [...text.whole.matchAll(/(?<![\w.])(\d+(?:\.\d+)?) ?(ma|µa|μa|ua|a)\b(?!\.?c)/gu)].flatMap(
    (match) => {
      const { from, to } = text.sentenceAt(match.index);
      const sentence = text.whole.slice(from, to);
      if (
        !/\b(?:limit\w*|max\w*|at most|no more than|not more than|less than|below|under|only|cannot|never|exceed\w*|or less)\b|[<≤]/u.test(
          sentence,
        )
      )
        return [];
      const mA = Number(match[1]) * (milliamperes[match[2] ?? ''] ?? 1);
      return [{ mA, mention: { span: text.spanOf(match.index, match.index + match[0].length) } }];
    },
  );
}

const rating =
  /\b(?:rated|ratings?|(?:maximum|max\.?|greatest|highest) (?:permitted |allowed )?(?:input|rating))\b[^.;\d\n]{0,40}(\d+(?:\.\d+)?) ?(kv|mv|v)\b/gu;
const volts: Readonly<Record<string, number>> = { kv: 1000, v: 1, mv: 1e-3 };

/** The supply against the greatest input that the text gives for meter or probe. */
function ratings(scene: Scene): readonly Finding[] {
  const supply = scene.setups
    .map((setup) => setup.supply)
    .reduce((a, b) => ((b?.emf_V ?? 0) > (a?.emf_V ?? 0) ? b : a), null);
  if (supply === null) return [];
  return [...scene.text.whole.matchAll(rating)].flatMap((match) => {
    const { from, to } = scene.text.sentenceAt(match.index);
    const most_V = Number(match[1]) * (volts[match[2] ?? ''] ?? 1);
    const about = /\b(?:(?:multi|volt)?-?meters?|probes?|dmms?)\b/u.test(scene.text.whole.slice(from, to));
    if (!about || supply.emf_V <= most_V) return [];
    return [
      finding('meter-rating', {
        span: supply.span,
        message: `${printQuantity(supply.emf_V, 'potential')} is more than the ${printQuantity(most_V, 'potential')} that the text gives as the greatest input of meter or probe.`,
        hints: ['Lower the supply, or take a meter and probe with a higher rating.'],
        related: [
          {
            span: scene.text.spanOf(match.index, match.index + match[0].length),
            message: 'The rating stands here.',
          },
        ],
      }),
    ];
  });
}
