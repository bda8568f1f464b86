/** Hazards of the supply: short circuits, cells that give much current, supplies fed from the mains, more voltage than is needed. */
import type { Supply } from '../../../setup/setup.ts';
import { all, type Hazard, type Note, type Scene } from '../hazard.ts';
import { atSupply } from './causes.ts';
import { textChemistries } from './chemistry.ts';
import { current, supplyWords } from './words.ts';

const metal = String.raw`\b(?:clips?|leads?|electrodes?|bars?|plates?|rings?|dis[ck]s?|wires?|cords?|terminals?|contacts?|plugs?|metal|pieces|ends|they|conductors?|foil|copper|poles?|connectors?|connections|crocodiles?|alligators?)\b`;
const not = String.raw`\b(?:never|not|no|without|avoid\w*|prevent\w*|stop\w*|cannot|\w+n't)\b`;
/** Within a clause; a decimal point is none. */
const gap = String.raw`(?:[^.;]|\.\d)*?`;
const meeting = String.raw`\b(?:touch\w*|meet\w*|bridg\w*|overlap\w*|contact|short\w*)\b`;

const apart: Note = {
  name: 'keep the clips apart',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(
      /\b(?:touch|meet|bridg|overlap|short|contact)\w*/u,
      new RegExp(`${not}${gap}${metal}${gap}${meeting}`, 'u'),
    ),
    all(
      /\b(?:touch|meet|bridg|overlap|short|contact)\w*/u,
      new RegExp(`${metal}${gap}${not}${gap}${meeting}`, 'u'),
    ),
    all(/\bapart\b|\bseparate[dl]?y?\b|\bfrom touching\b/u, new RegExp(metal, 'u')),
    all(
      /\b(?:from|of) (?:each|one) (?:an)?other\b/u,
      new RegExp(`${metal}${gap}\\b(?:clear|away|insulated|well)\\b`, 'u'),
    ),
    all(
      /\bbetween\b/u,
      new RegExp(`\\b(?:gap|space|distance|room|\\d+ ?(?:mm|cm))\\b.*\\bbetween\\b.*${metal}`, 'u'),
    ),
    all(
      /\bshort[- ]?circuit\w*|\bshort(?:s|ed|ing)?\b/u,
      /\b(?:never|not|no|avoid\w*|prevent\w*|cannot|\w+n't|beware|hot|warm|heat\w*|burn\w*|fire|danger\w*|risk|care|watch)\b/u,
    ),
    all(
      /\b(?:join|connect|link|wire|clip)\w*/u,
      new RegExp(
        `${not}${gap}\\b(?:together|directly|each other|one another|straight|across (?:the|a) (?:cell|battery|supply))\\b`,
        'u',
      ),
    ),
    all(
      /\bjoin\w*/u,
      new RegExp(`${not}[^.;]*\\bjoin\\w* (?:the |two |both |these |any |bare )*${metal}`, 'u'),
    ),
    all(
      /\b(?:touch|bridg|short)ing\b/u,
      new RegExp(metal, 'u'),
      /\b(?:hot|warm|heats?|burns?|flattens?|drains?|kills?|ruins?)\b/u,
    ),
    all(/\bacross the (?:gap|paper|bars|clips|terminals)\b/u, new RegExp(`${not} ${gap}${metal}`, 'u')),
    all(
      /\bif\b/u,
      new RegExp(`\\bif\\b.*${metal}${gap}${meeting}.*\\b(?:hot|warm|burn\\w*|current|heat\\w*)\\b`, 'u'),
    ),
  ],
  draft: 'Keep the two clips apart: do not let them touch each other or lie against the same metal.',
};

const joinedLast: Note = {
  name: 'join the supply last',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(
      /\blast\b(?! (?:lesson|week|time|year|term|month|page|column|row|reading|line|dot|question|two|few)s?\b)|\bfinally\b/u,
      /\b(?:connect\w*|join\w*|attach\w*|clip\w*|insert\w*|put\w*|switch\w*|turn\w*|plug\w*|add\w*|fit\w*|clos\w*|hook\w*|goes|go|on|in)\b/u,
      supplyWords,
    ),
    all(/\b(?:cells?|batter(?:y|ies)|power|supply|packs?)[ ,:]+(?:always |goes |comes |is |are )?last\b/u),
    all(/\bafter (?:everything|all|the rest)\b/u, /\b(?:goes|go|put|clip|on|in)\b/u, supplyWords),
    all(/\b(?:end|finish)\b/u, /\b(?:until|till) the (?:very )?(?:end|finish)\b/u, supplyWords),
    all(
      /\b(?:connect|join|insert|fit|switch(?:ed)? (?:\w+ ){0,3}on|turn(?:ed)? (?:\w+ ){0,3}on|power|plug)\w*/u,
      /\b(?:until|till|unless|only (?:when|after|once|if)|before|once|after|when)\b/u,
      /\b(?:check\w*|ready|complete\w*|finish\w*|assembl\w*|permission|inspect\w*|in place|built|wired|everything|rest|says|has seen|approv\w*|allow\w*|told|look\w*)\b/u,
      supplyWords,
    ),
    all(
      /\b(?:disconnect\w*|unclip\w*|unhook\w*|remov\w+|tak(?:e|es|en|ing)|switch(?:ed)? (?:\w+ ){0,3}off|turn(?:ed)? (?:\w+ ){0,3}off|unplug\w*)/u,
      /\b(?:first|before|whenever|between|each time|while)\b/u,
      supplyWords,
    ),
    // Where pupils join nothing: all is wired and stays so.
    all(
      /\bleave\w*\b/u,
      new RegExp(
        `\\bleave (?:the |all |both |our )*(?:\\w+ and (?:the )?)?${metal}.*\\b(?:where|as) (?:they|it) (?:are|is)\\b`,
        'u',
      ),
    ),
  ],
  draft: 'Join the supply last, when everything else is in place, and take it off first.',
};

const offWhenWarm: Note = {
  name: 'disconnect if anything grows warm',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(
      /\b(?:warm\w*|hot|heats?|heating|overheat\w*|burning|burnt|smok\w+|smell\w*)\b/u,
      /\b(?:disconnect\w*|unclip\w*|unhook\w*|remov\w*|take\w*|switch\w*|turn\w*|unplug\w*|break\w*|stop\w*|open|undo|tell|report|call|pull|isolat\w*|off|out)\b/u,
      /\b(?:if|when(?:ever)?|once|should|as soon as|anything|at once|immediately|straight ?away|feels?|gets?|becomes?|becoming|grows?|getting|any|moment)\b|[=?]/u,
    ),
  ],
  draft: 'If a lead or the supply feels warm, disconnect it at once and tell your teacher.',
};

const clipsShorted: Hazard = {
  code: 'clips-shorted',
  about: 'short circuits',
  why: 'Bare clips on one board can bridge: leads and cell grow hot enough to burn.',
  causes: (scene) => atSupply(scene, () => true),
  notes: [apart, joinedLast, offWhenWarm],
};

const fuse: Note = {
  name: 'use a fuse, or a supply that limits its current',
  serves: 'preparation',
  severity: 'warning',
  said: [all(current)],
  draft: 'The supply is fused or limits its current; its limit is written on it.',
};

const strong = new Set<string | null>(['alkaline', 'nickel-metal-hydride']);

const cellHighCurrent: Hazard = {
  code: 'cell-high-current',
  about: 'cells that give several amperes',
  why: 'Alkaline and nickel-metal-hydride cells give several amperes into a short circuit; zinc-carbon and zinc chloride cells give less.',
  causes: (scene) => [
    ...atSupply(
      scene,
      ({ source, chemistry, limit_A }) => source === 'cell' && limit_A === null && strong.has(chemistry),
    ),
    ...(scene.setups.some(({ supply }) => supply?.source === 'cell' && supply.chemistry !== null)
      ? []
      : textChemistries(scene).filter(({ chemistry }) => strong.has(chemistry))),
  ],
  notes: [fuse],
};

const cellsMany: Hazard = {
  code: 'cells-many',
  about: 'several cells in series',
  why: 'Four cells and more drive a larger current into a short circuit.',
  causes: (scene) =>
    atSupply(
      scene,
      ({ source, cells, emf_V, limit_A }) =>
        source === 'cell' && limit_A === null && cells >= 4 && emf_V >= 6,
    ),
  notes: [
    {
      ...fuse,
      name: 'use a fuse or a resistor, and check the leads',
      severity: 'note',
      draft:
        'A fuse or a resistor stands in the lead from the cells; the leads are checked before they are issued.',
    },
  ],
};

const cellsMixed: Hazard = {
  code: 'cells-mixed',
  about: 'mixed cells',
  why: 'A fresh cell drives current through an old one or one of another kind, which may leak.',
  causes: (scene) => atSupply(scene, ({ source, cells }) => source === 'cell' && cells > 1),
  notes: [
    {
      name: 'use cells of one kind and age',
      serves: 'preparation',
      severity: 'note',
      said: [
        all(/\bmix\w*/u, /\b(?:not|never|no|avoid\w*|\w+n't|old|new|kinds?|types?|brands?)\b/u),
        all(
          /\b(?:same|one|identical|alike|matched)\b/u,
          /\b(?:cells?|batter(?:y|ies))\b/u,
          /\b(?:kind|type|age|make|brand|pack|batch|sort|chemistry|set)\b/u,
        ),
        all(
          /\b(?:all|only) (?:new|fresh)\b|\btogether\b/u,
          /\b(?:cells?|batter(?:y|ies))\b/u,
          /\b(?:new|fresh|replace\w*|change\w*)\b/u,
        ),
      ],
      draft: 'The cells of a set are of the same kind and age; old and new ones are not mixed.',
    },
  ],
};

const packWords =
  /\b(?:power[- ]?packs?|power suppl(?:y|ies)|suppl(?:y|ies)|units?|psus?|plugs?|cables?|flex(?:es)?|leads?|cords?|appliances?)\b/u;

const anyPack =
  (is: (supply: Supply) => boolean) =>
  ({ setups }: Scene): boolean =>
    setups.some(({ supply }) => supply?.source === 'power-pack' && is(supply));

const powerPack: Hazard = {
  code: 'power-pack',
  about: 'supplies fed from the mains',
  why: 'A damaged unit, wrong terminals or a spill bring the mains or a high voltage near hands; a power pack gives several amperes.',
  causes: (scene) => atSupply(scene, ({ source }) => source === 'power-pack'),
  notes: [
    {
      name: 'use an inspected and tested unit',
      serves: 'preparation',
      severity: 'warning',
      said: [
        all(
          /\b(?:inspect\w*|visual\w*|tested|test dates?|test labels?|pat|portable appliance|electrical(?:ly)? test\w*|damag\w*|in[- ]date|fray\w*|crack\w*|condition)\b/u,
          packWords,
        ),
      ],
      draft: 'The power packs and their cables are inspected for damage and within their test date.',
    },
    {
      name: 'use a unit with an isolated output',
      serves: 'preparation',
      severity: 'warning',
      said: [
        all(
          /\b(?:isolat\w*|selv|safety extra[- ]low|extra[- ]low|separated|isolating transformer|double[- ]insulated)\b/u,
          /\b(?:power|suppl\w*|units?|output|packs?|transformer|source)\b/u,
        ),
        all(
          /\b(?:made|built|sold|intended|designed|meant) for (?:schools?|school use|education\w*|teaching|pupils|students)\b/u,
          packWords,
        ),
        all(
          /\b(?:school|educational|laboratory|lab)[- ](?:low[- ]voltage )?(?:power )?(?:packs?|suppl(?:y|ies)|units?)\b/u,
        ),
      ],
      draft: 'Only power packs made for schools are used, with an output isolated from the mains.',
      draftAmerican: 'Only power supplies made for schools are used, with an output isolated from the line.',
    },
    {
      name: 'ask for its limit or fuse',
      serves: 'preparation',
      severity: 'warning',
      said: [all(current)],
      draft: 'The greatest current of the power pack is known: it has a limit or a fuse.',
      // Where the block tells the limit no words need to.
      needed: anyPack(({ limit_A }) => limit_A === null),
    },
    {
      name: 'start from its lowest setting',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\b(?:zero|lowest|minimum|smallest|least|turned (?:right |fully )?down|(?:right|fully|all the way) down|down to|0 ?v|fully anti-?clockwise|counter-?clockwise)\b/u,
          /\b(?:start\w*|set\w*|turn\w*|before|begin\w*|switch\w*|first|knob|dial|control|output|voltage|setting)\b/u,
        ),
        all(
          /\b(?:turn|increase|raise|bring)\w*\b/u,
          /\bup (?:slowly|gradually|gently)|\b(?:slowly|gradually)\b.*\b(?:up|from)\b/u,
        ),
      ],
      draft: 'Set the power pack to its lowest output before you switch it on.',
    },
    {
      name: 'use the d.c. terminals',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\bd\.?c\b/u,
          /\b(?:terminals?|outputs?|sockets?|jacks?|side|connections?|not|never|only|a\.?c|red and black|posts?)\b/u,
        ),
      ],
      draft: 'Use the d.c. terminals of the power pack, not those marked a.c.',
      needed: anyPack(({ ac }) => !ac),
    },
    {
      name: 'keep it dry',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\b(?:dry|liquids?|water|drinks?|wet|damp|spill\w*|moist\w*|fluids?|bottles?)\b/u,
          /\b(?:keep|kept|hands?|bench|table|desk|away|no|not|never|must|only|stay|off|clear|from|\w+n't)\b/u,
        ),
      ],
      draft: 'Keep water and drinks away from the power pack, and work with dry hands.',
    },
  ],
};

const offBeforeTouching: Note = {
  name: 'switch off before touching the electrodes',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(
      /\b(?:off|disconnect\w*|unplug\w*|dead)\b/u,
      /\b(?:before|whenever|until|unless|while|first|when)\b/u,
      /\b(?:touch\w*|chang\w*|mov\w*|adjust\w*|handl\w*|rearrang\w*|altering?|clip\w*|electrodes?|hands?)\b/u,
    ),
    all(
      /\btouch\w*|\bhandl\w*/u,
      /\b(?:not|never|\w+n't|no)\b/u,
      /\b(?:electrodes?|metal|clips?|bars?|terminals?|plates?|conductors?)\b/u,
      /\b(?:on|live|connected|running|voltage)\b/u,
    ),
  ],
  draft: 'Switch the supply off before you touch the electrodes or move a clip.',
};

const supervised: Note = {
  name: 'work under supervision',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(
      /\b(?:supervis\w*|teacher|instructor|demonstrat\w*|technician)\b/u,
      /\b(?:supervis\w*|present|watch\w*|check\w*|only|permission|asks?|with|by)\b/u,
    ),
  ],
  draft: 'Work only while your teacher supervises.',
};

const voltageUsual: Hazard = {
  code: 'voltage-usual',
  about: 'more than 12 V',
  why: 'This practical needs 1.5 V to 6 V: readings, lines and questions are the same. A lower supply is the better answer.',
  causes: (scene) => {
    const { limits } = scene.department;
    const [usual, most] = [limits['practical-voltage'].value, limits['touch-dc'].value];
    return atSupply(scene, ({ source, emf_V, ac }) => isLow(source) && !ac && emf_V > usual && emf_V <= most);
  },
  notes: [offBeforeTouching, supervised],
};

const alternatingSupply: Hazard = {
  code: 'alternating-supply',
  about: 'alternating voltage',
  why: 'This practical uses 1.5 V to 6 V d.c.; alternating current is felt at a lower value and holds the hand.',
  causes: (scene) => {
    const most = scene.department.limits['touch-ac'].value;
    return atSupply(scene, ({ source, emf_V, ac }) => isLow(source) && ac && emf_V <= most);
  },
  notes: [offBeforeTouching, supervised],
};

/** Others are stopped for what they are. */
const isLow = (source: string): boolean => source === 'cell' || source === 'power-pack';

export const supplyHazards: readonly Hazard[] = [
  clipsShorted,
  cellHighCurrent,
  cellsMany,
  cellsMixed,
  powerPack,
  voltageUsual,
  alternatingSupply,
];
