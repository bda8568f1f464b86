/** Hazards of what else stands on the bench or is used to prepare it: liquids, oil and grain, paint, solder, flames, glass. */
import { all, type Hazard, type Note } from '../hazard.ts';
import { inSetups, inText } from './causes.ts';
import { eyes, handwashing, ventilation } from './words.ts';

const note = (name: string, draft: string, said: Note['said'], rest: Partial<Note> = {}): Note => ({
  name,
  serves: 'bench',
  severity: 'warning',
  said,
  draft,
  ...rest,
});

const keep =
  /\b(?:away|not?|never|clear|off|uphill|above|higher|distance|apart|out|behind|keep|dry|\w+n't)\b/u;

export const liquidWords =
  /\b(?:water|electrolytic) (?:trays?|tanks?|baths?|troughs?)\b|\b(?:trays?|tanks?|troughs?|dish(?:es)?|bowls?|baths?) of (?:\w+ )?(?:water|brine|electrolyte|solution)\b|\b(?:salt|salted|salty|tap|shallow) (?:water|solution)\b|\bbrine\b|\belectrolytes?\b|\b(?:copper|sodium|potassium|zinc)[\w() -]{0,24} solution\b|\b(?:wet|damp|dampened|moistened|soaked) (?:the )?(?:filter|blotting|conducting|conductive|paper)\b|\b(?:moisten|dampen|soak|wet) the (?:filter |blotting |conducting )?paper\b/gu;

const liquidNear: Hazard = {
  code: 'liquid-near',
  about: 'liquids beside electrodes',
  why: 'Wet hands let several times more current through, and a spill reaches the supply.',
  causes: (scene) => inText(scene, liquidWords),
  notes: [
    note('dry hands before touching the supply', 'Dry your hands before you touch the supply or a lead.', [
      all(/\bhands?\b|\bfingers?\b/u, /\b(?:dry|dried|wet|towels?)\b/u),
    ]),
    note(
      'keep the supply away from the liquid',
      'The supply stands away from the liquid and higher than it.',
      [
        all(
          /\b(?:suppl(?:y|ies)|power packs?|cells?|batter(?:y|ies)|meters?|electrical|unit)\b/u,
          /\b(?:water|liquid|tray|tank|wet|solution|spill\w*|splash\w*|dish|bath)\b/u,
          keep,
        ),
      ],
    ),
    note('wipe up spills', 'Wipe up spills at once.', [
      all(/\b(?:spill\w*|splash\w*|drip\w*)\b/u),
      all(/\b(?:wipe|mop)\w*/u, /\b(?:up|floor|bench|water|liquid|tray)\b/u),
    ]),
  ],
};

const oil: Hazard = {
  code: 'oil',
  about: 'oil',
  why: 'Oil on the floor makes people slip, it clings to skin, and here it stands between electrodes at a high voltage.',
  causes: (scene) =>
    inText(
      scene,
      /\b(?:castor|olive|vegetable|sunflower|rapeseed|canola|mineral|paraffin|silicone|groundnut|peanut|nut|cooking|transformer|baby|almond|linseed|light|clear) oils?\b|(?<![\w-])oil\b(?![- ]?(?:drops?|droplets?|lamps?|rigs?|compan\w+|paints?))/gu,
    ),
  notes: [
    note('stand the dish in a tray', 'The dish of oil stands in a tray.', [
      all(/\b(?:trays?|bunds?|basins?)\b(?! of)/u),
    ]),
    note(
      'wipe up oil at once',
      'Wipe up oil at once with paper towels, on the floor too; wash it off skin.',
      [
        all(
          /\b(?:wipe\w*|mop\w*|absorb\w*|paper towels?|clean\w*)\b/u,
          /\b(?:oil|spill\w*|floor|drips?|splash\w*|up)\b/u,
        ),
        all(/\b(?:slip\w*|spill\w*)\b/u),
      ],
    ),
    note(
      'keep the electrodes out of reach while they are on',
      'While the supply is on the electrodes are out of reach of pupils.',
      [
        all(
          /\b(?:reach|touch\w*|distance|screen|back|approach\w*)\b/u,
          /\b(?:electrodes?|dish|on|live|supply|pupils|students|nobody|no one|oil|metal)\b/u,
          /\b(?:out|not?|never|nobody|away|distance|screen|beyond|off|stay|stand|\w+n't)\b/u,
        ),
      ],
    ),
  ],
};

const grain: Hazard = {
  code: 'grain',
  about: 'semolina and other grain',
  why: 'Wheat holds gluten, an allergen; food that has been in a laboratory is no food.',
  causes: (scene) =>
    inText(
      scene,
      /\bsemolina\b|\bflour\b|\bpolenta\b|\bcouscous\b|\b(?:wheat|rice|barley|oat) (?:grains?|bran)\b|\bgrains? of (?:wheat|rice|semolina|cereal)\b|\bbread ?crumbs\b|\b(?:grass|cress|poppy|mustard|sesame) seeds?\b/gu,
    ),
  notes: [
    note('ask about allergies', 'Ask about allergies beforehand: wheat holds gluten.', [
      all(/\b(?:allerg\w*|gluten|coeliac|celiac|intoleran\w*)\b/u),
    ]),
    note('no tasting', 'Nothing here is tasted or eaten.', [
      all(
        /\b(?:tast\w*|eat\w*|eaten|food|swallow\w*|mouths?)\b/u,
        /\b(?:not?|never|nothing|nor|away|\w+n't)\b/u,
      ),
    ]),
    note(
      'throw it away afterwards',
      'It goes into the bin afterwards, not down the sink.',
      [all(/\b(?:bin|bins|binned|thrown?|dispos\w*|discard\w*|waste|rubbish|trash|sink|drain)\b/u)],
      { severity: 'note' },
    ),
  ],
};

const oilAllergen: Hazard = {
  code: 'oil-allergen',
  about: 'nut and castor oil',
  why: 'Nut oils and castor oil are allergens to some people.',
  causes: (scene) =>
    inText(scene, /\b(?:castor|groundnut|peanut|nut|almond|walnut|hazelnut|sesame) oils?\b/gu),
  notes: [
    note(
      'ask about allergies, or take another oil',
      'Ask about allergies to nuts and castor oil beforehand, or take another oil.',
      [all(/\b(?:allerg\w*|sensitiv\w*|another oil|other oil)\b/u)],
      { severity: 'note' },
    ),
  ],
};

const conductivePaint: Hazard = {
  code: 'conductive-paint',
  about: 'conducting paint and ink',
  why: 'Their solvents give off vapour, and nickel and silver can make skin sensitive.',
  causes: (scene) => [
    ...inSetups(
      scene,
      ({ block }) => scene.sheet.blocks[block]?.block.statements.find(({ kind }) => kind === 'painted')?.span,
      'This patch is painted.',
    ),
    ...inText(
      scene,
      /\b(?:conduct(?:ive|ing)|silver|nickel|carbon|graphite|electric|copper) (?:paints?|inks?|pens?|lacquers?|varnish(?:es)?|sprays?)\b/gu,
    ),
  ],
  notes: [
    note('ventilate', 'Paint where the room is well ventilated.', [all(ventilation)], {
      serves: 'preparation',
    }),
    note(
      'read its safety data sheet',
      'Its safety data sheet is read before it is used.',
      [all(/\b(?:data sheets?|sds|msds|hazard cards?|manufacturer's|maker'?s'?|label|coshh|hazcards?)\b/u)],
      { serves: 'preparation' },
    ),
    note('gloves, none on skin', 'Wear gloves; nothing is painted on skin.', [all(/\bgloves?\b|\bskin\b/u)], {
      serves: 'preparation',
    }),
  ],
};

const graphitePowder: Hazard = {
  code: 'graphite-powder',
  about: 'graphite dust',
  why: 'Dust of graphite is breathed in and makes meters conduct.',
  causes: (scene) =>
    inText(
      scene,
      /\bgraphite (?:powder|spray|dust)\b|\bpowdered graphite\b|\bsand(?:ed|ing)?\b(?!paper)[^.;\n]{0,60}\b(?:coating|graphite|coated|conducting paper|carbon)\b|\brub(?:bed|bing)? (?:off |down )?the (?:coating|graphite)\b/gu,
    ),
  notes: [
    note(
      'wipe wet, no dry sanding',
      'No dry sanding: dust is wiped up with a damp cloth.',
      [
        all(/\b(?:wet|damp|moist)\b/u, /\b(?:wip\w*|cloth|sand\w*|rub\w*|tissue|sponge)\b/u),
        all(/\bdry\b/u, /\b(?:not?|never|avoid|\w+n't)\b/u, /\b(?:sand\w*|rub\w*|brush\w*|sweep\w*)\b/u),
      ],
      { serves: 'preparation' },
    ),
    note(
      'ventilate',
      'Work where the room is well ventilated.',
      [all(ventilation), all(/\b(?:dust )?(?:masks?|respirators?)\b/u)],
      { serves: 'preparation' },
    ),
  ],
};

const soldering: Hazard = {
  code: 'soldering',
  about: 'soldering',
  why: 'The iron stands at 300 °C to 400 °C; the fume of rosin causes asthma.',
  causes: (scene) =>
    inText(
      scene,
      /\b(?:solder|solders|soldering|desolder\w*|soldering irons?)\b|\b(?:is|are|be|been|was|were) soldered\b/gu,
      'done',
    ),
  notes: [
    note(
      'put the iron in its stand',
      'The hot iron goes into its stand whenever it is not in the hand.',
      [all(/\bstands?\b|\bholders?\b/u, /\b(?:irons?|solder\w*|hot)\b/u)],
      { serves: 'preparation' },
    ),
    note('protect the eyes', 'Wear eye protection: solder spits.', [all(eyes)], { serves: 'preparation' }),
    note(
      'draw off the fume',
      'Solder where the fume is drawn off or the room is well ventilated.',
      [all(ventilation), all(/\bfumes?\b/u)],
      { serves: 'preparation' },
    ),
    note('wash hands afterwards', 'Wash your hands after soldering.', [all(/\bhands?\b/u, handwashing)], {
      serves: 'preparation',
    }),
  ],
};

const flame: Hazard = {
  code: 'flame',
  about: 'flames and hot plates',
  why: 'Flames reach hair, clothing and the paper itself. This practical needs none.',
  causes: (scene) =>
    inText(
      scene,
      /\b(?:naked|open|candle|gas) flames?\b|\bflame probes?\b|\bcandles?\b|\bbunsen(?: burners?)?\b|\bspirit (?:lamps?|burners?)\b|\bblow ?torch\w*\b|\bhot ?plates?\b|\bheat guns?\b|\b(?:gas|cigarette) lighters?\b/gu,
    ),
  notes: [
    note('tie back hair and loose clothing', 'Tie back long hair and loose clothing.', [
      all(/\b(?:hair|clothing|clothes|scar(?:f|ves)|sleeves)\b/u),
    ]),
    note('work on a mat that does not burn', 'Stand it on a heat-resistant mat, clear of paper.', [
      all(/\b(?:mats?|heat[- ]?(?:proof|resistant)|tiles?|bench protector|sand tray)\b/u),
    ]),
    note('say where the extinguisher is', 'Know where extinguisher and fire blanket are.', [
      all(/\b(?:extinguishers?|fire blankets?|wet cloth|sand bucket|fire)\b/u),
    ]),
  ],
};

const glass: Hazard = {
  code: 'glass',
  about: 'glass dishes',
  why: 'Chipped glass cuts, and broken glass hides in liquids.',
  causes: (scene) =>
    inText(
      scene,
      /\b(?:glass )?petri dish(?:es)?\b|\bglass (?:dish(?:es)?|plates?|trays?|beakers?|rods?|bowls?|troughs?|tanks?|jars?|sheets?)\b|\bbeakers?\b/gu,
    ),
  notes: [
    note(
      'check for chips, stand it in a tray, leave breakage to staff',
      'Check the glass for chips; leave broken glass to a technician.',
      [
        all(/\b(?:chip\w*|crack\w*|break\w*|broken|shatter\w*|plastic)\b/u),
        all(/\b(?:glass|dish|beaker)\b/u, /\b(?:trays?|care\w*|check\w*)\b/u),
      ],
      { severity: 'note' },
    ),
  ],
};

const alcohol: Hazard = {
  code: 'alcohol',
  about: 'flammable wipes',
  why: 'Alcohol burns with a flame that is hard to see, and its vapour creeps along the bench.',
  causes: (scene) =>
    inText(
      scene,
      /\balcohol(?: wipes?)?\b|\bisopropan(?:ol|yl)\b|\bisopropyl\b|\bpropan-2-ol\b|\bpropanol\b|\bethanol\b|\bmethylated spirits?\b|\bmeths\b|\bacetone\b|\bpropanone\b|\bwhite spirit\b/gu,
    ),
  notes: [
    note(
      'keep it from flames, in moving air',
      'Alcohol is flammable: keep it away from flames and sparks, and use it in moving air.',
      [all(/\b(?:flammable|inflammable|flames?|ignit\w*|sparks?|fire)\b/u), all(ventilation)],
      { severity: 'note', serves: 'preparation' },
    ),
  ],
};

export const materialHazards: readonly Hazard[] = [
  liquidNear,
  oil,
  grain,
  oilAllergen,
  conductivePaint,
  graphitePowder,
  soldering,
  flame,
  glass,
  alcohol,
];
