import type { CatalogueEntry } from './entry.ts';

/**
 * Findings about notes on safety. A warning or a note says what sheets of this kind usually carry and this one does not; a stop says that
 * the practical is none for pupils as it is written. IEC clauses and values marked so are from memory.
 */
export const safetyCodes = {
  'voltage-touch': {
    severity: 'stop',
    meaning:
      'Bare electrodes stand at more than pupils may touch: 40 V d.c. or 25 V a.c. where the department sets nothing lower.',
    source:
      'IEC 60364-4-41 for a.c.; common practice of schools for d.c. (the IEC has 60 V for separated sources, from memory)',
  },
  'voltage-liquid': {
    severity: 'stop',
    meaning: 'Bare electrodes near a liquid stand at more than 12 V.',
    source: 'IEC 60364-4-41, clause 414 (from memory); common practice of schools',
  },
  'eht-on-paper': {
    severity: 'stop',
    meaning:
      'A supply of kilovolts on conducting paper: pupils hold the probe, and the paper would pull the voltage down.',
    source: 'common practice, no source',
  },
  'eht-limit': {
    severity: 'stop',
    meaning: 'A supply of kilovolts without a stated limit of its current, or with one above 5 mA.',
    source:
      'guidance for school supplies has 5 mA; the touch current of IEC 61010-1 is 2 mA d.c. (from memory)',
  },
  'ht-supply': {
    severity: 'stop',
    meaning: 'A supply of hundreds of volts that is not limited, on bare electrodes.',
    source: 'common practice, no source',
  },
  'high-voltage-source': {
    severity: 'stop',
    meaning:
      'A source of high voltage that was not made for schools, such as an ignition coil or a part of a microwave oven.',
    source: 'common practice, no source',
  },
  'mains-electrodes': {
    severity: 'stop',
    meaning: 'The mains as the source of the field.',
    source: 'IEC 61140',
  },
  'microwave-oven': {
    severity: 'stop',
    meaning: 'A demonstration in a microwave oven.',
    source: 'common practice, no source',
  },
  'storm-outdoors': {
    severity: 'stop',
    meaning: 'Work outdoors in a thunderstorm, or with a kite or mast under clouds.',
    source: 'common practice, no source',
  },
  'cell-lithium-ion': {
    severity: 'stop',
    meaning: 'Lithium-ion cells on bare clips: short-circuited they may vent and burn.',
    source: 'common practice, no source',
  },
  'cell-lead-acid': {
    severity: 'stop',
    meaning: 'A lead-acid battery on bare clips: short-circuited it gives hundreds of amperes.',
    source: 'common practice, no source',
  },
  'cell-button': {
    severity: 'stop',
    meaning: 'Button cells in the hands of pupils: swallowed they burn from inside.',
    source: 'common practice, no source',
  },
  'meter-rating': {
    severity: 'stop',
    meaning: 'A supply above the greatest input that the text states for the meter or the probe.',
    source: 'common practice, no source',
  },
  'clips-shorted': {
    severity: 'warning',
    meaning:
      'Notes on a short circuit between the clips: kept apart, supply joined last, disconnected when anything grows warm.',
    source: 'common practice, no source',
  },
  'cell-chemistry': {
    severity: 'warning',
    meaning: 'The chemistry of the cells is not said.',
    source: 'common practice, no source',
  },
  'cell-high-current': {
    severity: 'warning',
    meaning: 'Cells that give several amperes into a short circuit, without a note on a fuse or a limit.',
    source: 'common practice, no source',
  },
  'cell-lithium': {
    severity: 'warning',
    meaning: 'Lithium cells, which may vent when they are short-circuited.',
    source: 'common practice, no source',
  },
  'cells-parallel': {
    severity: 'warning',
    meaning: 'Cells in parallel, which drive current through each other.',
    source: 'common practice, no source',
  },
  'cells-many': {
    severity: 'note',
    meaning: 'Cells in series that make 6 V or more, without a note on a fuse or a resistor.',
    source: 'common practice, no source',
  },
  'cells-mixed': {
    severity: 'note',
    meaning: 'Several cells without a note that they are of one kind and age.',
    source: 'common practice, no source',
  },
  'power-pack': {
    severity: 'warning',
    meaning:
      'Notes on a low-voltage supply fed from the mains: inspected, isolated, limited, started at its lowest, d.c. terminals, dry.',
    source: 'IEC 61558-2-6 for isolation; common practice, no source, for the rest',
  },
  'voltage-usual': {
    severity: 'warning',
    meaning:
      'More than 12 V d.c. on the paper, without a note on what that asks for: this practical needs 1.5 V to 6 V.',
    source: 'common practice, no source',
  },
  'alternating-supply': {
    severity: 'warning',
    meaning:
      'Alternating voltage on the paper, without a note on what that asks for: this practical uses 1.5 V to 6 V d.c.',
    source: 'common practice, no source',
  },
  'liquid-near': {
    severity: 'warning',
    meaning: 'Notes on a liquid beside electrodes: dry hands, supply away from it, spills.',
    source: 'common practice, no source',
  },
  'eht-demonstration': {
    severity: 'warning',
    meaning:
      'Notes on a demonstration with kilovolts: series resistor, off and at zero, earth, discharge, supervision.',
    source: 'common practice, no source',
  },
  'static-generator': {
    severity: 'warning',
    meaning: 'Notes on a static generator: earthed discharger, no added capacitance, one person at a time.',
    source: 'common practice, no source',
  },
  implants: {
    severity: 'warning',
    meaning:
      'A high-voltage demonstration without a line on pacemakers, implants, hearing aids and heart conditions.',
    source: 'common practice, no source',
  },
  'sparks-near': {
    severity: 'warning',
    meaning:
      'A high-voltage demonstration without a line on electronics, hair, loose clothing and flammables near sparks.',
    source: 'common practice, no source',
  },
  'charge-stored': {
    severity: 'warning',
    meaning: 'A capacitor or screened cable at kilovolts without a line on the charge that it keeps.',
    source: 'common practice, no source',
  },
  'copper-edges': {
    severity: 'warning',
    meaning: 'Notes on the cut edges of sheet metal: sharp, counted, deburred.',
    source: 'common practice, no source',
  },
  'sharp-points': {
    severity: 'warning',
    meaning:
      'Notes on electrodes with a point: it pierces skin, is rounded, and is carried by the other end.',
    source: 'common practice, no source',
  },
  'cutting-tools': {
    severity: 'warning',
    meaning: 'Notes on snips and knives, and on holes and slits that are cut into the paper.',
    source: 'common practice, no source',
  },
  'conductive-paint': {
    severity: 'warning',
    meaning: 'Notes on conducting paint and ink: ventilation, safety data sheet, gloves.',
    source: 'common practice, no source',
  },
  'graphite-powder': {
    severity: 'warning',
    meaning: 'Notes on dust of graphite from sanding or powder.',
    source: 'common practice, no source; the respirable limit of NIOSH for graphite is 2.5 mg/m³',
  },
  soldering: {
    severity: 'warning',
    meaning: 'Notes on soldering: stand, eyes, ventilation, washing hands.',
    source: 'common practice, no source',
  },
  oil: {
    severity: 'warning',
    meaning: 'Notes on a dish of oil: tray, wiping, electrodes out of reach.',
    source: 'common practice, no source',
  },
  grain: {
    severity: 'warning',
    meaning: 'Notes on semolina and other grain: allergies, no tasting.',
    source: 'common practice, no source',
  },
  'oil-allergen': {
    severity: 'note',
    meaning: 'Nut or castor oil without a line on allergies.',
    source: 'common practice, no source',
  },
  flame: {
    severity: 'warning',
    meaning: 'Notes on a flame or hot plate: hair and clothing, mat, extinguisher.',
    source: 'common practice, no source',
  },
  glass: {
    severity: 'note',
    meaning: 'A glass dish without a line on chips and breakage.',
    source: 'common practice, no source',
  },
  'probe-point': {
    severity: 'warning',
    meaning: 'Notes on a fine probe: eyes and skin, cap or count.',
    source: 'common practice, no source',
  },
  'probe-plug': {
    severity: 'note',
    meaning: 'A bare plug used as probe, without a line on counting it and on mains sockets.',
    source: 'common practice, no source',
  },
  'meter-socket': {
    severity: 'note',
    meaning: 'A multimeter without a line on its ampere socket, which would short-circuit the supply.',
    source: 'common practice, no source',
  },
  pins: {
    severity: 'note',
    meaning: 'Pins without a line on counting them.',
    source: 'common practice, no source',
  },
  'paper-dust': {
    severity: 'note',
    meaning: 'Graphite and carbon paper without a line on washing hands or wiping the bench.',
    source: 'common practice, no source',
  },
  alcohol: {
    severity: 'note',
    meaning: 'A wipe with alcohol or another flammable liquid without a line on flames and air.',
    source: 'common practice, no source',
  },
  'leads-trailing': {
    severity: 'note',
    meaning: 'Long leads without a line on where they lie.',
    source: 'common practice, no source',
  },
  'metal-overhang': {
    severity: 'note',
    meaning: 'Metal that reaches past the edge of the paper, without a line on it.',
    source: 'common practice, no source',
  },
  'group-size': {
    severity: 'note',
    meaning: 'More than three pupils at one board.',
    source: 'common practice, no source',
  },
  'medical-details': {
    severity: 'warning',
    meaning: 'A medical need of somebody who can be told from the sheet.',
    source: 'common practice of data protection, no source',
  },
  'claim-car': {
    severity: 'warning',
    meaning: 'A promise of protection in a car or other closed metal body.',
    source: 'common practice, no source',
  },
  'claim-point': {
    severity: 'warning',
    meaning: 'A claim that a point protects, or drains a cloud.',
    source: 'J. Appl. Meteor. 42, 984 (2003): trials of lightning rods',
  },
  'draft-left': {
    severity: 'warning',
    meaning: 'A draft of a note that nobody has adapted, in a sheet that is reviewed or issued.',
  },
  'risk-assessment-missing': {
    severity: 'warning',
    meaning: 'The front matter names no risk assessment.',
    source: 'the five steps of a risk assessment; common practice of schools',
  },
  'review-missing': {
    severity: 'note',
    meaning: 'The front matter has no date of the next review.',
    source: 'common practice, no source',
  },
  'review-past': {
    severity: 'warning',
    meaning: 'The date of the next review has passed.',
    source: 'common practice, no source',
  },
  'review-stale': {
    severity: 'note',
    meaning: 'The last review is older than the period of the department.',
    source: 'common practice, no source',
  },
  'notes-kept-in': {
    severity: 'note',
    meaning: 'The notes on safety stand in another document, which is not read.',
  },
} as const satisfies Record<string, CatalogueEntry>;

export type SafetyCode = keyof typeof safetyCodes;
