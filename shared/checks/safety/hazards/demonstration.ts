/** Hazards of demonstrations with high voltage. On conducting paper there are none of these: a kilovolt there is a stop. */
import { all, type Cause, type Hazard, type Note, type Scene } from '../hazard.ts';
import { inText } from './causes.ts';

export const ehtWords =
  /\be\.?h\.?t\b\.?|\bextra[- ]high[- ]tension\b|\bhigh[- ]voltage (?:d\.?c\.? )?(?:power )?(?:suppl(?:y|ies)|units?|sources?)\b|\b(?:kilovolt|[1-9]\d*(?:\.\d+)? ?kv) (?:d\.?c\.? )?(?:power )?(?:suppl(?:y|ies)|units?|sources?)\b/gu;

const generatorWords =
  /\bvan[- ]de[- ]graaf+\w*|\bwimshurst\w*|\b(?:electro)?static generators?\b|\binfluence machines?\b/gu;

export const ehtCauses = (scene: Scene): readonly Cause[] => inText(scene, ehtWords);
const generatorCauses = (scene: Scene): readonly Cause[] => inText(scene, generatorWords);
const sparkCauses = (scene: Scene): readonly Cause[] => [...ehtCauses(scene), ...generatorCauses(scene)];

const operated = (name: string, draft: string, said: Note['said']): Note => ({
  name,
  serves: 'operator',
  severity: 'warning',
  said,
  draft,
});

const supervised = operated(
  'say who demonstrates and who supervises',
  'The teacher demonstrates; pupils watch from their places and touch nothing.',
  [
    all(
      /\b(?:teachers?|instructors?|staff)\b/u,
      /\b(?:demonstrat\w*|only|alone|supervis\w*|operat\w*|shows?|handles?|by)\b/u,
    ),
    all(/\bsupervis\w*/u),
    all(/\bdemonstrat\w*/u, /\b(?:only|teacher|never|not|by)\b/u),
  ],
);

const ehtDemonstration: Hazard = {
  code: 'eht-demonstration',
  about: 'demonstrations with kilovolts',
  why: 'Even a limited supply startles, and what was charged stays charged: people jerk back into other things.',
  causes: ehtCauses,
  notes: [
    operated(
      'take the output through the built-in series resistor',
      'Take the output through the built-in series resistor of the supply.',
      [
        all(
          /\bresistors?\b/u,
          /\b(?:series|built[- ]in|internal|safety|m(?:eg)?a?ohms?|output|mω|limit\w*|through|via)\b|\bMΩ|mω/u,
        ),
      ],
    ),
    operated(
      'switch off and turn to zero before touching',
      'Turn the supply to zero and switch it off before anything is touched.',
      [
        all(
          /\b(?:zero|off|down)\b/u,
          /\b(?:before|until|unless|whenever|first)\b/u,
          /\b(?:touch\w*|approach\w*|chang\w*|mov\w*|adjust\w*|handl\w*|connect\w*|near|hands?)\b/u,
        ),
        all(
          /\btouch\w*/u,
          /\b(?:not|never|nothing|no|\w+n't)\b/u,
          /\b(?:on|live|charged|running|until|while)\b/u,
        ),
      ],
    ),
    {
      ...operated(
        'earth it as the instructions of supply and apparatus say',
        'Earth one terminal as the instructions of the supply and of the apparatus say.',
        [
          all(
            /\b(?:earth\w*|ground(?:ed|ing|s)?)\b/u,
            /\b(?:terminals?|side|negative|one|instructions?|supply|apparatus|lead|connect\w*|output|case|pole|socket|as|is|must)\b/u,
          ),
        ],
      ),
      draftAmerican: 'Ground one terminal as the instructions of the supply and of the apparatus say.',
    },
    operated(
      'discharge through a resistor or rod, earthed end first',
      'Discharge afterwards through a resistor or rod: join its earthed end first, then touch the other.',
      [
        all(/\bdischarg\w*/u),
        all(/\bshort(?:ed|ing|s)?\b/u, /\b(?:out|plates?|electrodes?|insulated|lead|rod|charge\w*)\b/u),
        all(/\bcharge\w*/u, /\b(?:remain\w*|stored?|left|residual|remov\w*|drain\w*|bleed\w*)\b/u),
      ],
    ),
    supervised,
  ],
};

const staticGenerator: Hazard = {
  code: 'static-generator',
  about: 'static generators',
  why: 'A dome stores energy: one of 0.15 m radius at 300 kV holds 0.75 J. The stricter of 350 mJ and 45 µC governs.',
  causes: generatorCauses,
  notes: [
    operated(
      'discharge the dome by an earthed discharger',
      'Discharge the dome by its earthed discharger before anyone comes near it.',
      [
        all(/\bdischarg\w*/u),
        all(/\b(?:earth\w*|ground(?:ed|ing)?)\b/u, /\b(?:spheres?|rods?|wand|dome|before|touch\w*)\b/u),
      ],
    ),
    operated(
      'add no capacitance',
      'Add no capacitance: no Leyden jar and no capacitor is joined to the dome.',
      [
        all(/\b(?:capacit\w*|leyden)\b/u, /\b(?:not?|never|without|\w+n't|remov\w*)\b/u),
        all(/\b(?:stored? energy|energy stored|0\.5 j|350 mj|500 mj|45 µc|45 μc)\b/u),
      ],
    ),
    operated('one person at a time', 'One person at a time comes near, on the word of the teacher.', [
      all(
        /\b(?:one|single|volunteer|1)\b/u,
        /\b(?:person|pupil|student|volunteer|at a time|only|hand|people|teacher)\b/u,
      ),
      all(
        /\bnobody\b|\bno one\b|\bno (?:pupil|student)s?\b|\b(?:pupils|students|class)\b/u,
        /\b(?:touch\w*|distance|back|near\w*|away|stay|keep|metres?|meters?)\b/u,
      ),
    ]),
    supervised,
  ],
};

const implants: Hazard = {
  code: 'implants',
  about: 'pacemakers and implants',
  why: 'Sparks and strong fields disturb devices in and on the body; a shock is worse for people with a heart condition.',
  causes: sparkCauses,
  notes: [
    {
      name: 'keep people with pacemakers, implants or heart conditions away',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\b(?:pacemakers?|implant\w*|heart (?:conditions?|problems?|troubles?|disease)|cardiac|insulin pumps?|hearing aids?|medical (?:devices?|electronic\w*|conditions?)|electronic (?:medical )?(?:devices?|implants?) (?:in|on) )/u,
        ),
      ],
      draft:
        'People with pacemakers, implants, insulin pumps, hearing aids or heart conditions keep away. Nobody is asked to say why.',
    },
  ],
};

const sparksNear: Hazard = {
  code: 'sparks-near',
  about: 'what sparks reach',
  why: 'Sparks spoil electronics, light vapours, and strong fields lift hair and loose clothing towards the metal.',
  causes: sparkCauses,
  notes: [
    {
      name: 'keep phones and other electronics away',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\b(?:phones?|mobiles?|electronics?|electronic (?:devices?|equipment)|computers?|laptops?|tablets?|watch(?:es)?|bank cards?|calculators?)\b/u,
          /\b(?:away|off|not?|never|clear|distance|out|metres?|meters?|remove\w*|leave|bags?|keep|\w+n't)\b/u,
        ),
      ],
      draft: 'Keep phones, computers and other electronics away.',
    },
    {
      name: 'tie back hair and loose clothing',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\b(?:hair|clothing|clothes|scar(?:f|ves)|ties|jewell?e?ry|sleeves)\b/u,
          /\b(?:tie\w*|tied|back|loose|away|tuck\w*|remov\w*|off|clear|long)\b/u,
        ),
      ],
      draft: 'Tie back long hair and loose clothing.',
    },
    {
      name: 'keep flammables away',
      serves: 'operator',
      severity: 'warning',
      said: [
        all(
          /\b(?:flammable\w*|inflammable\w*|solvents?|alcohol|vapou?rs?|gas(?:es)?|spirits?|fire)\b/u,
          /\b(?:away|not?|never|clear|near|out|remov\w*|\w+n't|far)\b/u,
        ),
      ],
      draft: 'Keep flammable liquids and gas away from sparks.',
    },
  ],
};

const chargeStored: Hazard = {
  code: 'charge-stored',
  about: 'stored charge',
  why: 'A capacitor keeps its charge when the supply is off: 10 nF at 5 kV hold 125 mJ.',
  causes: (scene) =>
    sparkCauses(scene).length === 0
      ? []
      : inText(
          scene,
          /\bcapacitors?\b|\bleyden jars?\b|\b(?:screened|coaxial|shielded) (?:cables?|leads?)\b/gu,
        ),
  notes: [
    operated(
      'let the charge bleed off, wait, short it out',
      'A bleed resistor stands across the capacitor; wait, then short it out with an insulated lead.',
      [all(/\b(?:bleed\w*|short(?:ed|ing)? (?:it |them )?out|discharg\w*)\b/u)],
    ),
  ],
};

export const demonstrationHazards: readonly Hazard[] = [
  ehtDemonstration,
  staticGenerator,
  implants,
  sparksNear,
  chargeStored,
];
