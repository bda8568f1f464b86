/** Notes as different teachers write them. Each is the note of its hazard, and each alone. */
import { ofMaterialsAndDemonstrations } from './phrasings-of-materials.ts';

export interface Phrasings {
  /** What makes the hazard be there. */
  readonly supply?: string;
  readonly block?: string;
  readonly text?: string;
  readonly notes: Readonly<Record<string, readonly string[]>>;
}

const fuse = [
  'The pack is fused at 1 A.',
  'Each unit has a current limit of 0.5 A.',
  'A 100 Ω resistor stands in the positive lead.',
  'The supply limits its current to 1 A.',
  'The supplies trip on overload.',
  'Use only a current-limited source.',
];

const ofSupplyAndBench: Readonly<Record<string, Phrasings>> = {
  'clips-shorted': {
    notes: {
      'keep the clips apart': [
        'Do not let the two clips touch.',
        'The clips must never touch one another.',
        'Keep the crocodile clips well apart.',
        'Never short-circuit the cell.',
        'Avoid short circuits.',
        'Make sure that the leads cannot touch.',
        'Do not join the clips.',
        'Leave at least 20 mm between the two clips.',
        'Don’t connect the terminals directly to each other.',
        'A short circuit makes the leads hot.',
        'Be careful not to let the metal electrodes touch.',
        'Keep the two electrodes separate.',
        'Alligator clips: never let them bridge the electrodes.',
        'If the clips touch, a large current flows.',
        'A lead bridging the two bars flattens the cell and burns your fingers.',
        'Nothing of metal lies loose, and no clip goes across the gap.',
      ],
      'join the supply last': [
        'Connect the cell last.',
        'Join the battery last of all and take it off first.',
        'The cell is the last thing you connect.',
        'Switch on only after your teacher has checked the circuit.',
        'Leave the cell out until the end.',
        'Have your circuit checked before you connect the battery.',
        'Disconnect the cell before you move anything.',
        'Do not switch on until everything is in place.',
        'Insert the cell when the rest of the circuit is complete.',
        'Finally, clip on the cell.',
        'Build first, power last.',
        'The battery goes in after everything else.',
      ],
      'disconnect if anything grows warm': [
        'If anything gets warm, disconnect the cell.',
        'Disconnect at once if a lead feels hot.',
        'Should the battery become warm, take it out.',
        'Stop and tell your teacher if you notice a burning smell or anything hot.',
        'When a wire heats up, switch off immediately.',
        'Unclip the cell as soon as it feels warm.',
        'Hot leads? Anything that heats up: take the cell off.',
      ],
    },
  },
  'cell-high-current': {
    supply: 'cell 1.5 V, alkaline',
    notes: { 'use a fuse, or a supply that limits its current': fuse },
  },
  'cells-many': {
    supply: '4 cells 1.5 V, zinc-carbon',
    notes: { 'use a fuse or a resistor, and check the leads': fuse },
  },
  'cells-mixed': {
    supply: '2 cells 1.5 V, zinc-carbon',
    notes: {
      'use cells of one kind and age': [
        'Do not mix old and new cells.',
        'Never mix cells of different types.',
        'Both cells are of the same make and age.',
        'Use cells from one pack.',
        'Only fresh cells are used together.',
        'The batteries are a matched set.',
      ],
    },
  },
  'power-pack': {
    supply: 'power-pack 5 V',
    notes: {
      'use an inspected and tested unit': [
        'The power packs have been inspected this term.',
        'Check the plug and the cable for damage.',
        'All units are PAT tested.',
        'Power supplies are within their test date.',
        'A visual check of the mains lead is done before each use.',
        'Report a cracked plug or a frayed cable.',
      ],
      'use a unit with an isolated output': [
        'The supply has an isolating transformer.',
        'Only school power packs are used.',
        'The output is SELV, from a certified unit.',
        'Use a power supply made for schools.',
        'Power packs with an output isolated from the mains.',
        'Use the extra-low-voltage supply of the bench.',
      ],
      'ask for its limit or fuse': fuse,
      'start from its lowest setting': [
        'Turn the knob to zero before you switch on.',
        'Start with the output at its lowest.',
        'Set the dial to its minimum first.',
        'The voltage control is turned down before the switch is touched.',
        'Begin at 0 V.',
        'Bring the voltage up slowly.',
      ],
      'use the d.c. terminals': [
        'Use the d.c. terminals.',
        'Connect to the DC output, not the AC one.',
        'Only the red and black d.c. sockets are used.',
        'The leads go to the side marked d.c.: never to a.c.',
        'Check that you are on the dc side.',
        'D.c. output only.',
      ],
      'keep it dry': [
        'Keep liquids away from the power pack.',
        'No drinks on the bench.',
        'Work with dry hands.',
        'Don’t use the supply near water.',
        'The bench must be dry.',
        'Bottles stay in bags, off the table.',
      ],
    },
  },
  'voltage-usual': {
    supply: 'power-pack 20 V, limit 100 mA',
    notes: {
      'switch off before touching the electrodes': [
        'Switch off before you touch the electrodes.',
        'The supply is off whenever a clip is moved.',
        'Do not touch the bars while the supply is on.',
        'Disconnect before changing the electrodes.',
        'Never handle the metal with the voltage on.',
        'Turn the supply off first, then adjust the electrodes.',
      ],
      'work under supervision': [
        'Your teacher supervises this practical.',
        'Work only when a teacher is present.',
        'Under direct supervision.',
        'Ask your teacher to check before you go on.',
        'Only with the permission of the teacher.',
        'A member of staff supervises each bench.',
      ],
    },
  },
  'alternating-supply': {
    supply: 'power-pack 6 V, ac',
    notes: {
      'switch off before touching the electrodes': ['Switch off before you touch the electrodes.'],
      'work under supervision': ['Your teacher supervises this practical.'],
    },
  },
  'copper-edges': {
    block: 'copper 0.15 mm',
    notes: {
      'the edges are sharp: hold the pieces where they do not cut': [
        'The edges of the copper are sharp.',
        'Careful: cut metal has sharp edges.',
        'Hold the strips by the tab.',
        'Handle the electrodes with care, they can cut.',
        'Watch your fingers on the sharp copper.',
        'Metal edges may scratch your skin.',
        'Carry the rings flat, by the middle.',
      ],
      'count the pieces out and in': [
        'Count the electrodes out and in.',
        'All pieces are counted back.',
        'Hand back every electrode to the technician.',
        'Return the copper to its envelope.',
        'The same number of parts comes back.',
        'Collect the metal at the end and check the number of pieces.',
      ],
      'deburr the edges before the pieces are issued': [
        'The pieces are deburred.',
        'Edges are smoothed with emery paper.',
        'File off burrs before use.',
        'Rub down the edges with fine abrasive.',
        'Corners have been rounded.',
        'The metal edges were filed in the prep room.',
      ],
    },
  },
  'sharp-points': {
    block: 'spike S base 20 mm, length 60 mm, tip at (150, 20) mm pointing left floating',
    notes: {
      'the point pierces: carry it by the other end': [
        'The spike is sharp.',
        'Points pierce skin.',
        'Carry the triangle with its point down.',
        'Mind the tip of the spike: it pricks.',
        'Hold the pointed electrode by its base.',
        'Careful with the sharp point.',
      ],
      'count it out and in': [
        'Count the spikes out and in.',
        'Spikes are counted.',
        'Return the pointed electrodes, all of them.',
        'Hand the spike back to the teacher.',
        'All the electrodes are collected.',
        'Count everything at the end.',
      ],
      'deburr it and round its tip before it is issued': [
        'The tip of the spike is rounded.',
        'Tips are blunted before issue.',
        'File the point to a radius of 0.5 mm.',
        'Spikes have been deburred.',
        'The electrodes have smooth, dulled corners.',
        'Round off the tip.',
      ],
    },
  },
  'metal-overhang': {
    block: 'bar Q 10 mm × 30 mm at (150, 10) mm floating',
    notes: {
      'keep metal within the edge of the board': [
        'No metal sticks out past the edge of the board.',
        'Keep the tabs within the edge of the board.',
        'The bars do not project beyond the board.',
        'Copper must not overhang the bench.',
        'Clips stay inside the edges of the backboard and the board.',
        'Nothing juts over the edge of the table.',
      ],
    },
  },
  'cutting-tools': {
    block: 'slit from (100, 20) mm to (100, 60) mm',
    notes: {
      'cut beforehand by a technician, or on a mat by people trained for it': [
        'Slits are cut beforehand by the technician.',
        'The paper is ready-cut.',
        'Cut on a mat, away from your fingers.',
        'Use a steel ruler and cut away from your body.',
        'Holes are cut in the prep room.',
        'Only trained staff use the knife.',
      ],
    },
  },
  'probe-point': {
    block: 'meter 10 MΩ, probe tip 0.5 mm',
    notes: {
      'keep it away from eyes and skin': [
        'Keep the probe away from your eyes.',
        'Mind your eyes: the probe is sharp.',
        'Do not point the probe at anyone’s face.',
        'The tip of the probe must not come near eyes.',
        'Wear goggles when using the needle.',
        'Never press the probe against skin.',
      ],
      'cap it or count it': [
        'Put the cap back on the probe.',
        'Probes are counted out and in.',
        'A cork covers the probe when it is not used.',
        'Cover the probe with its sleeve.',
        'Return the probe to its tray, each group one.',
        'The probe is kept capped.',
      ],
    },
  },
  'probe-plug': {
    text: 'Use a bare 4 mm plug as the probe.',
    notes: {
      'one counted bare lead for each set, kept from mains sockets': [
        'Keep the bare plug away from mains sockets.',
        'Never put a plug into a wall socket.',
        'Bare leads are counted.',
        'Count the leads in.',
        'The plug must not go near a power socket.',
        'Plugs are collected at the end.',
      ],
    },
  },
  'meter-socket': {
    text: 'Read the multimeter.',
    notes: {
      'keep the lead out of the ampere socket': [
        'Keep the lead out of the ampere socket.',
        'Never use the 10 A socket.',
        'Plug the red lead into the volts socket only.',
        'The lead must not go in the amps terminal.',
        'Not the current input.',
        'Check that the red lead is in the V socket.',
      ],
    },
  },
  pins: {
    text: 'Fix the paper with four drawing pins.',
    notes: {
      'count the pins': [
        'Count the pins.',
        'All pins go back into the box.',
        'Hand the pins back.',
        'No pin is left on the floor.',
        'Pins prick: pick up any that you drop.',
        'Return four pins.',
      ],
    },
  },
  'paper-dust': {
    notes: {
      'wash hands or wipe the bench afterwards': [
        'Wash your hands.',
        'Hands must be washed afterwards.',
        'Wipe the bench down.',
        'Clean your fingers before you touch books.',
        'Clean the tables at the end.',
        'Rinse hands after the practical.',
      ],
    },
  },
  'leads-trailing': {
    text: 'Use the 2 m leads.',
    notes: {
      'lay the leads along the bench': [
        'Lay the leads along the bench.',
        'Do not let leads trail.',
        'Leads are a trip hazard.',
        'Keep cables out of the aisle.',
        'No wires across walkways.',
        'Keep the leads tidy.',
      ],
    },
  },
};

export const phrasings = { ...ofSupplyAndBench, ...ofMaterialsAndDemonstrations };
