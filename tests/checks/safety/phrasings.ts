/** Notes as different teachers write them. Each is the note of its hazard, and each alone. */

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

export const phrasings: Readonly<Record<string, Phrasings>> = {
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
  'liquid-near': {
    text: 'Fill the water tray to a depth of 5 mm.',
    notes: {
      'dry hands before touching the supply': [
        'Dry your hands before you touch the supply.',
        'Never touch a lead with wet hands.',
        'Hands must be dry.',
        'Use the towels for your hands.',
        'Work with dry fingers.',
        'Keep your hands dry.',
      ],
      'keep the supply away from the liquid': [
        'Keep the supply away from the water.',
        'The cell stands uphill from the tray.',
        'No water near the meter.',
        'The battery is kept dry, clear of the tank.',
        'Stand the supply higher than the tray.',
        'Do not stand the cell next to the dish.',
      ],
      'wipe up spills': [
        'Wipe up spills.',
        'Report any spill.',
        'Mop up water at once.',
        'Splashes are dried.',
        'Spilt water: wipe the floor.',
        'If it drips, stop.',
      ],
    },
  },
  oil: {
    text: 'Pour castor oil into the dish. Ask about allergies.',
    notes: {
      'stand the dish in a tray': [
        'The dish stands in a tray.',
        'Use a drip tray.',
        'Stand it on a tray.',
        'Put the oil on a tray.',
        'A tray catches spills.',
        'Everything stands in a plastic tray.',
      ],
      'wipe up oil at once': [
        'Wipe up oil at once.',
        'Use paper towels on the floor.',
        'Oil on the floor makes people slip.',
        'Mop up drips.',
        'Clean up oil with kitchen roll.',
        'Spills are cleaned at once.',
      ],
      'keep the electrodes out of reach while they are on': [
        'The electrodes are out of reach while the supply is on.',
        'Nobody touches the dish while it is on.',
        'Stand back, away from the electrodes.',
        'Pupils stay at a distance, not near the electrodes.',
        'Do not touch the oil while the supply is on.',
        'A screen keeps pupils away.',
      ],
    },
  },
  grain: {
    text: 'Sprinkle semolina on it.',
    notes: {
      'ask about allergies': [
        'Ask about allergies.',
        'Semolina contains gluten.',
        'Not for anyone allergic to wheat.',
        'Coeliac pupils use another seed.',
        'Check for an allergy first.',
        'Gluten: see the medical list.',
      ],
      'no tasting': [
        'Do not taste it.',
        'Never eat anything in the laboratory.',
        'It is not food.',
        'Nothing goes into the mouth, nothing is eaten.',
        'No tasting.',
        'Don’t eat it.',
      ],
      'throw it away afterwards': [
        'Throw it into the bin.',
        'It goes in the bin, not the sink.',
        'Dispose of it with the waste.',
        'Discard it afterwards.',
        'Bin it.',
        'Keep it out of the drain.',
      ],
    },
  },
  'oil-allergen': {
    text: 'Fill the dish with castor oil.',
    notes: {
      'ask about allergies, or take another oil': [
        'Ask about allergies.',
        'Some people are allergic to it.',
        'If anyone is sensitive, use another oil.',
        'Allergy list checked.',
        'Take another oil if in doubt.',
        'Check allergies to nuts.',
      ],
    },
  },
  'conductive-paint': {
    text: 'Paint the electrodes with silver paint.',
    notes: {
      ventilate: [
        'Ventilate the room.',
        'Use it in a fume cupboard.',
        'Open the windows.',
        'Work in a well-ventilated room.',
        'Keep a window open.',
        'Good ventilation is needed.',
      ],
      'read its safety data sheet': [
        'Read the safety data sheet.',
        'See the SDS.',
        'Follow the manufacturer’s instructions.',
        'Check the label.',
        'The maker’s data sheet is in the file.',
        'Hazard card 12 applies.',
      ],
      'gloves, none on skin': [
        'Wear gloves.',
        'Keep it off your skin.',
        'Gloves are worn.',
        'No painting on skin.',
        'Nitrile gloves.',
        'Avoid contact with skin.',
      ],
    },
  },
  'graphite-powder': {
    text: 'Rub graphite powder into the paper.',
    notes: {
      'wipe wet, no dry sanding': [
        'Wipe up with a damp cloth.',
        'No dry sanding.',
        'Never sand it dry.',
        'Wet wiping only.',
        'Sand it wet.',
        'Do not brush it up dry.',
      ],
      ventilate: [
        'Ventilate the room.',
        'Open a window.',
        'Wear a dust mask.',
        'Use extraction.',
        'In a fume cupboard.',
        'Well ventilated.',
      ],
    },
  },
  soldering: {
    text: 'Solder a lead to each pin. Count the pins.',
    notes: {
      'put the iron in its stand': [
        'Put the iron back in its stand.',
        'The hot iron rests in its holder.',
        'Use the stand for the soldering iron.',
        'The iron belongs in the stand.',
        'Soldering irons have stands.',
        'Never lay a hot iron down: use its stand.',
      ],
      'protect the eyes': [
        'Wear eye protection.',
        'Goggles on.',
        'Wear safety glasses.',
        'Protect your eyes.',
        'Eye protection is worn.',
        'Safety spectacles must be worn.',
      ],
      'draw off the fume': [
        'Use the fume extractor.',
        'Work in a ventilated place.',
        'Do not breathe the fumes.',
        'Open a window.',
        'Fumes are drawn off.',
        'Extraction on.',
      ],
      'wash hands afterwards': [
        'Wash your hands after soldering.',
        'Hands are washed.',
        'Wash hands.',
        'Clean your hands.',
        'Rinse your hands well.',
        'Hands must be washed before break.',
      ],
    },
  },
  flame: {
    text: 'Light the Bunsen burner.',
    notes: {
      'tie back hair and loose clothing': [
        'Tie back long hair.',
        'Hair tied back.',
        'Tuck in loose clothing.',
        'No scarves.',
        'Roll up sleeves.',
        'Long hair must be tied back.',
      ],
      'work on a mat that does not burn': [
        'Use a heat-resistant mat.',
        'Stand it on a heatproof mat.',
        'Work on a tile.',
        'The burner stands on a mat.',
        'Use a bench protector.',
        'In a sand tray.',
      ],
      'say where the extinguisher is': [
        'Know where the extinguisher is.',
        'A fire blanket is at hand.',
        'Keep a wet cloth near.',
        'The sand bucket is by the door.',
        'Fire extinguisher on the wall.',
        'In case of fire shout.',
      ],
    },
  },
  glass: {
    text: 'Pour it into a glass dish.',
    notes: {
      'check for chips, stand it in a tray, leave breakage to staff': [
        'Check the glass for chips.',
        'Report broken glass.',
        'Take a plastic dish.',
        'The dish stands in a tray.',
        'No cracked dishes.',
        'If it breaks, stand back.',
      ],
    },
  },
  alcohol: {
    text: 'Wipe the copper with propan-2-ol.',
    notes: {
      'keep it from flames, in moving air': [
        'It is flammable.',
        'Keep it away from flames.',
        'No ignition sources.',
        'Well ventilated.',
        'Open a window.',
        'No sparks near it.',
      ],
    },
  },
  'eht-demonstration': {
    text: 'Your teacher will use an EHT supply, limited to 2 mA. PEOPLE',
    notes: {
      'take the output through the built-in series resistor': [
        'Use the 50 MΩ series resistor.',
        'The output goes through the built-in resistor.',
        'Connect via the internal resistor.',
        'Take it through the safety resistor.',
        'A series resistor is in the lead.',
        'The 50 megaohm resistor stays in the circuit.',
      ],
      'switch off and turn to zero before touching': [
        'Switch off before you touch anything.',
        'Turn it to zero before anyone approaches.',
        'Off and at zero before the leads are moved.',
        'Never touch while it is on.',
        'Nothing is touched until it is off.',
        'Down to zero first, then handle the plates.',
      ],
      'earth it as the instructions of supply and apparatus say': [
        'Earth the negative terminal.',
        'One terminal is earthed.',
        'Ground one side.',
        'Connect the earth lead as the instructions say.',
        'The case is earthed as described.',
        'The negative pole is grounded.',
      ],
      'discharge through a resistor or rod, earthed end first': [
        'Discharge the plates.',
        'Discharge it through a rod.',
        'Short out the plates with an insulated lead.',
        'Remove the charge that is left.',
        'Residual charge is drained.',
        'Use the discharge rod.',
      ],
      'say who demonstrates and who supervises': [
        'Only the teacher operates it.',
        'A demonstration by the teacher.',
        'Under supervision.',
        'The teacher alone handles the supply.',
        'The instructor demonstrates.',
        'A demonstration, never a practical.',
      ],
    },
  },
  'static-generator': {
    text: 'We run the van de Graaff generator.',
    notes: {
      'discharge the dome by an earthed discharger': [
        'Discharge the dome.',
        'Use the earthed sphere before you come near.',
        'The discharger is earthed.',
        'Discharge it after use.',
        'Touch it with the earthed rod.',
        'The dome is discharged.',
      ],
      'add no capacitance': [
        'No Leyden jars.',
        'Do not add capacitors.',
        'Stored energy below 0.5 J.',
        'Without extra capacitance.',
        'Never connect a capacitor.',
        'The energy stored is small.',
      ],
      'one person at a time': [
        'One person at a time.',
        'One volunteer only.',
        'No pupil touches it.',
        'The class stays back.',
        'Nobody goes near it.',
        'Only a single student at the dome.',
      ],
      'say who demonstrates and who supervises': [
        'Only the teacher operates it.',
        'Demonstrated by the teacher.',
        'Under supervision.',
        'The teacher alone runs it.',
        'Staff only.',
        'A demonstration, never a practical.',
      ],
    },
  },
  implants: {
    text: 'We run the van de Graaff generator.',
    notes: {
      'keep people with pacemakers, implants or heart conditions away': [
        'Anyone with a pacemaker keeps away.',
        'People with heart conditions stay back.',
        'Not for people with implants.',
        'Hearing aids are switched off.',
        'Insulin pumps: keep away.',
        'Medical devices must be kept away.',
      ],
    },
  },
  'sparks-near': {
    text: 'We run the van de Graaff generator.',
    notes: {
      'keep phones and other electronics away': [
        'Keep phones away.',
        'No mobiles near it.',
        'Leave electronics in your bags.',
        'Computers are kept clear.',
        'Switch phones off.',
        'Remove watches.',
      ],
      'tie back hair and loose clothing': [
        'Tie back long hair.',
        'Loose clothing tucked in.',
        'Hair tied back.',
        'Take off scarves.',
        'Ties off.',
        'Jewellery removed.',
      ],
      'keep flammables away': [
        'No flammable liquids near.',
        'Keep flammables away.',
        'Solvents are kept away.',
        'Alcohol must not be near.',
        'Gas taps: keep clear of gas.',
        'Remove inflammable things.',
      ],
    },
  },
  'charge-stored': {
    text: 'Your teacher will use an EHT supply, limited to 2 mA. Connect a capacitor across it.',
    notes: {
      'let the charge bleed off, wait, short it out': [
        'A bleed resistor is fitted.',
        'Short it out afterwards.',
        'Discharge the capacitor.',
        'Wait, then short it out with a lead.',
        'Bleed off the charge.',
        'It is discharged by the teacher.',
      ],
    },
  },
};
