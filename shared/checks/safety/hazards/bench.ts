/** Hazards of the bench: probes, meters, pins, leads, paper. */
import type { Meter } from '../../../setup/setup.ts';
import { all, type Cause, type Hazard, type Scene } from '../hazard.ts';
import { inSetups, inText } from './causes.ts';
import { counting, handwashing } from './words.ts';

const probeWords = /\b(?:probes?|needles?|prods?|test leads?)\b/u;

const probePoint: Hazard = {
  code: 'probe-point',
  about: 'fine probes',
  why: 'A fine probe is a needle: it goes into eyes and fingers when somebody is jostled.',
  causes: (scene) => {
    const told = inText(
      scene,
      /\b(?:pointed|sharp|fine|needle|fine-tipped)[- ](?:probes?|tips?|points?)\b|\bprobes? with (?:an? )?(?:fine|sharp|needle) (?:point|tip)\b|\bneedle probes?\b/gu,
    );
    const fine = inSetups(
      scene,
      ({ meter }) =>
        meter !== null && meter.tip_mm < bluntFrom_mm && isTold(scene, meter) ? meter.span : null,
      'The tip of the probe stands here.',
    );
    return told.length > 0 || plugProbe(scene).length === 0 ? [...fine, ...told] : [];
  },
  notes: [
    {
      name: 'keep it away from eyes and skin',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\b(?:probes?|needles?|points?|pointed|tips?|prods?|test leads?)\b/u,
          /\b(?:eyes?|faces?|skin|goggles|spectacles)\b|\beye[- ]/u,
        ),
      ],
      draft: 'Keep the point of the probe away from eyes and skin.',
    },
    {
      name: 'cap it or count it',
      serves: 'bench',
      severity: 'note',
      said: [
        all(probeWords, counting),
        all(probeWords, /\b(?:caps?|capped|covers?|covered|corks?|sheaths?|sleeves?|shroud\w*|stoppers?)\b/u),
      ],
      draft: 'Put the cap on the probe when it is not in use; probes are counted out and in.',
    },
  ],
};

/** A contact this wide does not pierce, mm. */
const bluntFrom_mm = 2;

/** A tip that no line gives may be anything. */
function isTold({ sheet }: Scene, { span }: Meter): boolean {
  const statements = sheet.blocks.flatMap(({ block }) => block.statements);
  return statements.some((one) => one.kind === 'meter' && one.span.from === span.from && one.tip !== null);
}

const plugProbe = (scene: Scene): readonly Cause[] =>
  inText(
    scene,
    /\b(?:bare )?(?:4 mm |banana |wander )(?:plugs?|leads?)\b[^.;\n]{0,40}\b(?:as|for) (?:a |the )?probes?\b|\bbare (?:4 mm |banana )?(?:plugs?|leads?)\b|\b(?:plug|lead) (?:end )?(?:is|as) (?:a |the )?probe\b/gu,
  );

const probePlug: Hazard = {
  code: 'probe-plug',
  about: 'bare plugs',
  why: 'A bare 4 mm plug fits into a mains socket.',
  causes: plugProbe,
  notes: [
    {
      name: 'one counted bare lead for each set, kept from mains sockets',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\bsockets?\b|\boutlets?\b/u,
          /\b(?:mains|wall|outlets?|power)\b/u,
          /\b(?:not|never|no|away|keep|kept|clear|\w+n't|far)\b/u,
        ),
        all(/\b(?:plugs?|leads?)\b/u, counting),
      ],
      draft: 'One bare lead belongs to each set: it is counted, and kept away from mains sockets.',
      draftAmerican: 'One bare lead belongs to each set: it is counted, and kept away from wall outlets.',
    },
  ],
};

const meterSocket: Hazard = {
  code: 'meter-socket',
  about: 'the sockets of a multimeter',
  why: 'A lead in the ampere socket makes the meter a short circuit across the supply.',
  causes: (scene) => inText(scene, /\b(?:multi-?meters?|dmms?)\b/gu, 'done'),
  notes: [
    {
      name: 'keep the lead out of the ampere socket',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\b(?:ampere|amps?|ammeter|current|10 ?a|ma|a)\b[- ]*(?:\/ ?ma )?(?:socket|input|range|terminal|jack|setting)s?\b/u,
        ),
        all(
          /\bvolts?\b|\bvoltage\b|\bv ?ω?(?: ?\/ ?ω)?\b/u,
          /\b(?:sockets?|inputs?|jacks?|terminals?)\b/u,
          /\b(?:com|only|check|red|must|use|plug\w*|lead)\b/u,
        ),
      ],
      draft: 'Keep the lead of the meter out of its ampere socket: there it would short-circuit the supply.',
    },
  ],
};

const pins: Hazard = {
  code: 'pins',
  about: 'pins',
  why: 'Pins prick, and those that fall are trodden on or found by the next class.',
  causes: (scene) =>
    inText(
      scene,
      /\b(?:drawing|map|mapping|push|panel|optical|steel|brass|dressmaking|dressmakers'?) ?pins?\b|\bthumb ?tacks?\b|\bpins\b|\bpin (?:the|it|them|each|both|down)\b|\bpinned\b/gu,
    ),
  notes: [
    {
      name: 'count the pins',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\b(?:pins?|thumb ?tacks?|tacks?)\b/u,
          new RegExp(
            `${counting.source}|\\b(?:lose|lost|loose|dropped|floor|none (?:is|are) left|pick up|box|prick\\w*)\\b`,
            'u',
          ),
        ),
      ],
      draft: 'Count the pins out and in; none is left on the bench or the floor.',
    },
  ],
};

const paperDust: Hazard = {
  code: 'paper-dust',
  about: 'graphite and carbon',
  why: 'Graphite and carbon rub off on hands, books and into meters.',
  causes: (scene) => inSetups(scene, ({ paper }) => paper?.span, 'The paper stands here.'),
  notes: [
    {
      name: 'wash hands or wipe the bench afterwards',
      serves: 'bench',
      severity: 'note',
      said: [
        all(/\bhands?\b|\bfingers?\b/u, handwashing),
        all(/\b(?:wipe|clean|wash)\w*/u, /\b(?:bench|benches|desks?|tables?|surfaces?|meters?)\b/u),
      ],
      draft: 'Wash your hands afterwards: graphite and carbon rub off.',
    },
  ],
};

const long = String.raw`(?:[2-9]|[1-9]\d|1\.[1-9]\d?|[2-9]\.\d+)`;
const cords = String.raw`\b(?:leads?|cables?|wires?|cords?)\b`;

const leadsTrailing: Hazard = {
  code: 'leads-trailing',
  about: 'long leads',
  why: 'People trip over leads and pull the set-up down.',
  causes: (scene) =>
    inText(
      scene,
      new RegExp(
        `(?<![\\d.])${long} ?m(?: long)? (?:4 mm )?${cords}|` +
          `${cords} (?:of |are |is |, )?${long} m\\b|${cords} (?:of )?(?:more|longer) than 1 m\\b`,
        'gu',
      ),
      'done',
    ),
  notes: [
    {
      name: 'lay the leads along the bench',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\b(?:leads?|cables?|wires?|cords?)\b/u,
          /\b(?:along|trip\w*|trail\w*|route\w*|aisles?|floor|gangways?|tidy|walkways?|off the)\b/u,
        ),
      ],
      draft: 'Lay the leads along the bench, so that nobody trips over them.',
    },
  ],
};

export const benchHazards: readonly Hazard[] = [
  probePoint,
  probePlug,
  meterSocket,
  pins,
  leadsTrailing,
  paperDust,
];
