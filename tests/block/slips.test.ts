import { test } from 'vitest';
import { checkBlock } from './blocks.ts';

test('decimal commas', () => {
  checkBlock(`
    supply cell 1,5 V
                ^^^ error decimal-comma This is a decimal comma. The decimal sign is a point: a comma separates the parts of a line.
                => supply cell 1.5 V
    paper 240,5 × 160 mm, 5 kΩ per square
          ^^^^^ error decimal-comma This is a decimal comma. The decimal sign is a point: a comma separates the parts of a line.
          => paper 240.5 × 160 mm, 5 kΩ per square
    bar N 10 mm × 120 mm at (40,5, 95) mm negative
                            ^^^^^^^^^^ error decimal-comma A decimal comma in coordinates: the decimal sign is a point, the comma stands between x and y.
                            => bar N 10 mm × 120 mm at (40.5, 95) mm negative
    bar P 10 mm × 120 mm at (40, 95,5) mm negative
                            ^^^^^^^^^^ error decimal-comma A decimal comma in coordinates: the decimal sign is a point, the comma stands between x and y.
                            => bar P 10 mm × 120 mm at (40, 95.5) mm negative
    bar Q 10 mm × 120 mm at (40,5,95) mm negative
                            ^^^^^^^^^ error decimal-comma A decimal comma in coordinates: the decimal sign is a point, the comma stands between x and y.
                            => bar Q 10 mm × 120 mm at (40.5, 95) mm negative
                            => bar Q 10 mm × 120 mm at (40, 5.95) mm negative
    bar R 10 mm × 120 mm at (40,5, 95,5) mm negative
                            ^^^^^^^^^^^^ error decimal-comma A decimal comma in coordinates: the decimal sign is a point, the comma stands between x and y.
                            => bar R 10 mm × 120 mm at (40.5, 95.5) mm negative
    bar S 10 mm × 120 mm at (40,95) mm negative
    supply eht 1,500 V
               ^^^^^ error decimal-comma This is a decimal comma. The decimal sign is a point: a comma separates the parts of a line.
               => supply eht 1.500 V
               => supply eht 1500 V
  `);
});

test('lists do not share units', () => {
  checkBlock(`
    row A from N to P at 10, 15, 20 mm
                         ^^^^^^^^^^^^^ error unit-shared Each number of a list has its own unit: a comma could be a decimal comma.
                         => row A from N to P at 10 mm, 15 mm, 20 mm
    row B from N to P at 10,15 mm
                         ^^^^^ error decimal-comma This is a decimal comma. The decimal sign is a point: a comma separates the parts of a line.
                         => row B from N to P at 10.15 mm
    row C from N to P at 10, 15 mm
                         ^^^^^^^^^ error unit-shared Each number of a list has its own unit: a comma could be a decimal comma.
                         => row C from N to P at 10 mm, 15 mm
    equipotentials 0.2, 0.4, 0.6 V
                   ^^^^^^^^^^^^^^^ error unit-shared Each number of a list has its own unit: a comma could be a decimal comma.
                   => equipotentials 0.2 V, 0.4 V, 0.6 V
    row D from N to P at 10, 15, 20
                         ^^ error unit-missing 10 of what? Here stands a length, with its unit: 10 mm or 10 cm or 10 m.
                         => row D from N to P at 10 mm, 15, 20
                         => row D from N to P at 10 cm, 15, 20
                         => row D from N to P at 10 m, 15, 20
                             ^^ error unit-missing 15 of what? Here stands a length, with its unit: 15 mm or 15 cm or 15 m.
                             => row D from N to P at 10, 15 mm, 20
                             => row D from N to P at 10, 15 cm, 20
                             => row D from N to P at 10, 15 m, 20
                                 ^^ error unit-missing 20 of what? Here stands a length, with its unit: 20 mm or 20 cm or 20 m.
                                 => row D from N to P at 10, 15, 20 mm
                                 => row D from N to P at 10, 15, 20 cm
                                 => row D from N to P at 10, 15, 20 m
  `);
});

test('a word behind a list is no unit', () => {
  checkBlock(`
    row E from N to P at 10, 15 floating
                         ^^ error unit-missing 10 of what?
                             ^^ error unit-missing 15 of what?
  `);
});

test('numbers without a unit', () => {
  checkBlock(`
    bar N 10 × 120 at (60, 80) mm negative
               ^^^ error unit-missing 120 of what? Here stands a length, with its unit: 120 mm or 120 cm or 120 m.
               => bar N 10 × 120 mm at (60, 80) mm negative
               => bar N 10 × 120 cm at (60, 80) mm negative
               => bar N 10 × 120 m at (60, 80) mm negative
    bar P 10 mm × 120 mm at (60, 80) negative
                            ^^^^^^^^ error unit-missing Coordinates need their unit: \`(60, 80) mm\`.
                            => bar P 10 mm × 120 mm at (60, 80) mm negative
                            => bar P 10 mm × 120 mm at (60, 80) cm negative
    supply cell 1.5
                ^^^ error unit-missing 1.5 of what? Here stands a potential, with its unit: 1.5 V or 1.5 mV or 1.5 kV.
                => supply cell 1.5 V
                => supply cell 1.5 mV
                => supply cell 1.5 kV
    meter 10
          ^^ error unit-missing 10 of what? Here stands a resistance, with its unit: 10 kΩ or 10 MΩ or 10 Ω.
          => meter 10 kΩ
          => meter 10 MΩ
          => meter 10 Ω
    row A from N to P every 10
                            ^^ error unit-missing 10 of what? Here stands a length, with its unit: 10 mm or 10 cm or 10 m.
                            => row A from N to P every 10 mm
                            => row A from N to P every 10 cm
                            => row A from N to P every 10 m
    disc D diameter 20 mm at centre held at 1
                                            ^ error unit-missing 1 of what? Here stands a potential, with its unit: 1 V or 1 mV or 1 kV.
                                            => disc D diameter 20 mm at centre held at 1 V
                                            => disc D diameter 20 mm at centre held at 1 mV
                                            => disc D diameter 20 mm at centre held at 1 kV
    disc E diameter 20 at centre floating
                    ^^ error unit-missing 20 of what? Here stands a length, with its unit: 20 mm or 20 cm or 20 m.
                    => disc E diameter 20 mm at centre floating
                    => disc E diameter 20 cm at centre floating
                    => disc E diameter 20 m at centre floating
    bar Q 10 mm × 120 mm at centre turned 30 negative
                                          ^^ error unit-missing 30 of what? Here stands an angle, with its unit: 30°.
                                          => bar Q 10 mm × 120 mm at centre turned 30° negative
  `);
});

test('capitals in units', () => {
  checkBlock(`
    paper 240 MM × 160 mm, 5 KΩ per square
              ^^ error unit-capitals Capitals count in units, and there is no “MM”: 240 mm or 240 Mm?
              => paper 240 mm × 160 mm, 5 KΩ per square
              => paper 240 Mm × 160 mm, 5 KΩ per square
                             ^^ error unit-capitals Capitals count in units, and there is no “KΩ”: 5 kΩ?
                             => paper 240 MM × 160 mm, 5 kΩ per square
    supply cell 1.5 v, internal 500 Mohms, limit 3 ma
                    ^ error unit-capitals Capitals count in units, and there is no “v”: 1.5 V?
                    => supply cell 1.5 V, internal 500 Mohms, limit 3 ma
                                                   ^^ error unit-capitals Capitals count in units, and there is no “ma”: 3 mA?
                                                   => supply cell 1.5 v, internal 500 Mohms, limit 3 mA
    meter 10 MOHM, resolution 10 mv
             ^^^^ error unit-capitals Capitals count in units, and there is no “MOHM”: 10 MΩ?
             => meter 10 MΩ, resolution 10 mv
                                 ^^ error unit-capitals Capitals count in units, and there is no “mv”: 10 mV?
                                 => meter 10 MOHM, resolution 10 mV
    copper 0.1 MM
               ^^ error unit-capitals Capitals count in units, and there is no “MM”: 0.1 mm or 0.1 Mm?
               => copper 0.1 mm
               => copper 0.1 Mm
    copper 0.1 Cm
               ^^ error unit-capitals Capitals count in units, and there is no “Cm”: 0.1 cm?
               => copper 0.1 cm
  `);
});

test('m and M are never swapped in silence', () => {
  checkBlock(`
    meter 10 mΩ, resolution 0.01 V
          ^^^^^ warning unit-unlikely 10 mΩ would short the paper. 10 MΩ?
          => meter 10 MΩ, resolution 0.01 V
    paper 240 mm × 160 mm, 5 mΩ per square
                           ^^^^ warning unit-unlikely 5 mΩ per square is sheet metal, not paper. 5 MΩ, or kΩ?
                           => paper 240 mm × 160 mm, 5 MΩ per square
    supply cell 1.5 mV
                ^^^^^^ warning unit-unlikely 1.5 mV is very little for a supply. 1.5 V?
                => supply cell 1.5 V
    supply eht 3 MV
               ^^^^ warning unit-unlikely 3 MV is a bolt of lightning. 3 kV?
               => supply eht 3 kV
    copper 0.1 Mm
               ^^ warning unit-unlikely 0.1 Mm are thousands of kilometres. 0.1 mm?
               => copper 0.1 mm
  `);
});

test('units of another kind, unknown units, inches', () => {
  checkBlock(`
    copper 4 V
           ^^^ error unit-dimension 4 V is a potential. Here stands a length: 4 mm or 4 cm or 4 m.
           => copper 4 mm
           => copper 4 cm
           => copper 4 m
    bar N 1 in × 5 inches at centre negative
          ^^^^ error unit-inches Lengths are in millimetres here, not in inches: 25.4 mm?
          => bar N 25.4 mm × 5 inches at centre negative
                 ^^^^^^^^ error unit-inches Lengths are in millimetres here, not in inches: 127 mm?
                 => bar N 1 in × 127 mm at centre negative
    copper 0.1"
           ^^^^ error unit-inches Lengths are in millimetres here, not in inches: 2.54 mm?
           => copper 2.54 mm
    meter 10 MV
          ^^^^^ error unit-dimension 10 MV is a potential. Here stands a resistance: 10 kΩ or 10 MΩ or 10 Ω.
          => meter 10 kΩ
          => meter 10 MΩ
          => meter 10 Ω
    contact N 50 Ω
              ^^^^ error unit-dimension 50 Ω is a resistance. Here stands a contact resistance: 50 Ω cm².
              => contact N 50 Ω cm²
    clip N 50 Ω cm²
           ^^^^^^^^ error unit-dimension 50 Ω cm² is a contact resistance. Here stands a resistance: 50 kΩ or 50 MΩ or 50 Ω.
           => clip N 50 kΩ
           => clip N 50 MΩ
           => clip N 50 Ω
    copper 3 parsecs
           ^ error unit-missing 3 of what? Here stands a length, with its unit: 3 mm or 3 cm or 3 m.
           => copper 3 mm parsecs
           => copper 3 cm parsecs
           => copper 3 m parsecs
    copper 3furlongs
            ^^^^^^^^ error unit-unknown “furlongs” is not a unit that is known here. Here stands a length: 3 mm or 3 cm or 3 m.
            => copper 3 mm
            => copper 3 cm
            => copper 3 m
    bar P 10 KΩ × 20 mm at centre positive
             ^^ error unit-unknown “KΩ” is not a unit that is known here. Here stands a length: 10 mm or 10 cm or 10 m.
             => bar P 10 mm × 20 mm at centre positive
             => bar P 10 cm × 20 mm at centre positive
             => bar P 10 m × 20 mm at centre positive
  `);
});

test('per square', () => {
  checkBlock(`
    paper 240 mm × 160 mm, 5 kΩ
                           ^^^^ warning per-square-missing A sheet resistance is “per square”. Is this the resistance of a square of the paper?
                           => paper 240 mm × 160 mm, 5 kΩ per square
    paper 240 mm × 160 mm, 5 kΩ/cm²
                           ^^^^^^^^ warning per-square-missing A sheet resistance is per square, whatever the size of the square, not per square centimetre.
                           => paper 240 mm × 160 mm, 5 kΩ per square
    paper 240 mm × 160 mm, 5 kΩ per cm²
                           ^^^^^^^^^^^^ warning per-square-missing A sheet resistance is per square, whatever the size of the square, not per square centimetre.
                           => paper 240 mm × 160 mm, 5 kΩ per square
    painted 20 mm × 20 mm at centre, 1 kΩ
                                     ^^^^ warning per-square-missing A sheet resistance is “per square”. Is this the resistance of a square of the paper?
                                     => painted 20 mm × 20 mm at centre, 1 kΩ per square
  `);
});

test('cells', () => {
  checkBlock(`
    supply 2 cells 1.5 V
                   ^^^^^ note cells-total 2 cells of 1.5 V in series make 3 V.
    supply 2 cells 3 V
                   ^^^ warning cells-each 2 cells of 3 V in series make 6 V. Is each cell 1.5 V?
                   => supply 2 cells 1.5 V
    supply 4 cells 6 V, zinc-carbon
                   ^^^ warning cells-each 4 cells of 6 V in series make 24 V. Is each cell 1.5 V?
                   => supply 4 cells 1.5 V, zinc-carbon
    supply 2 cells 3 V, lithium-primary
                   ^^^ note cells-total 2 cells of 3 V in series make 6 V.
    supply 2.5 cells 1.5 V
           ^^^ error number-whole Only whole numbers of cells make sense.
           => supply 3 cells 1.5 V
    supply 0 cells 1.5 V
           ^ error number-positive At least one of the cells is needed.
    supply 1.5 V
               ^ error part-missing What supply? \`cell 1.5 V\`, \`2 cells 1.5 V\`, \`power-pack 6 V\`, \`eht 3 kV\` or \`ht 250 V\`.
               => supply cell 1.5 V
               => supply power-pack 1.5 V
               => supply eht 1.5 V
               => supply ht 1.5 V
    supply
    ^^^^^^ error part-missing What supply? \`cell 1.5 V\`, \`2 cells 1.5 V\`, \`power-pack 6 V\`, \`eht 3 kV\` or \`ht 250 V\`.
    supply cell
           ^^^^ error part-missing How many volts? \`cell 1.5 V\`.
    supply cell, zinc-carbon
                 ^^^^^^^^^^^ error part-missing How many volts? \`cell 1.5 V\`.
    supply cell 1.5 V, 2 V
                       ^^^ error part-twice This is said twice in one line. Which one holds?
    supply battery 4.5 V
           ^^^^^^^ error word-unknown A battery is several cells: how many, and of how many volts each?
           => supply 3 cells 1.5 V
           => supply cell 4.5 V
  `);
});

test('coordinates', () => {
  checkBlock(`
    bar N 10 mm × 120 mm at (60 80) mm negative
                            ^^^^^^^ error coordinates-form Coordinates are a pair with a comma: \`(60, 80) mm\`, x first, from the bottom left corner.
                            => bar N 10 mm × 120 mm at (60, 80) mm negative
    bar P 10 mm × 120 mm at (60; 80) mm negative
                            ^^^^^^^^ error coordinates-form Coordinates are a pair with a comma: \`(60, 80) mm\`, x first, from the bottom left corner.
                            => bar P 10 mm × 120 mm at (60, 80) mm negative
    bar Q 10 mm × 120 mm at (60, 80 mm negative
                                      | error coordinates-form The bracket is not closed.
                                      => bar Q 10 mm × 120 mm at (60, 80 mm) negative
    bar R 10 mm × 120 mm at 60, 80 mm negative
                            ^^^^^^^^^ error coordinates-form Coordinates stand in round brackets.
                            => bar R 10 mm × 120 mm at (60, 80) mm negative
    bar S 10 mm × 120 mm (60, 80) mm negative
                         ^ error part-missing \`at\` is missing before the bracket.
                         => bar S 10 mm × 120 mm at (60, 80) mm negative
    bar T 10 mm × 120 mm at (60) mm negative
                            ^^^^ error coordinates-form Coordinates are a pair with a comma: \`(60, 80) mm\`, x first, from the bottom left corner.
    bar U 10 mm × 120 mm at (60, 80) V negative
                                     ^ error unit-dimension Coordinates are lengths, not in V.
                                     => bar U 10 mm × 120 mm at (60, 80) mm negative
    bar V 10 mm × 120 mm at (left, up) mm negative
                            ^^^^^^^^^^ error coordinates-form Coordinates are a pair with a comma: \`(60, 80) mm\`, x first, from the bottom left corner.
    outline F (20, 20) (40, 20) mm floating
                                   ^^^^^^^^ error part-missing At least three corners are needed: \`(20, 20) (40, 20) (30, 60) mm\`.
  `);
});

test('misspelt and misplaced words', () => {
  checkBlock(`
    baar N 10 mm × 120 mm at centre negative
    ^^^^ error word-unknown “baar” is not known here: \`bar\`?
    => bar N 10 mm × 120 mm at centre negative
    bar P 10 mm × 120 mm at centre postive
                                   ^^^^^^^ error word-unknown “postive” is not known here: \`positive\`?
                                   => bar P 10 mm × 120 mm at centre positive
    bar Q 10 mm × 120 mm at centr negative
                            ^^^^^ error word-unknown “centr” is not known here: \`centre\`?
                            => bar Q 10 mm × 120 mm at centre negative
    ring R diamter 50 mm, wall 4 mm, at centre floating
           ^^^^^^^ error word-unknown “diamter” is not known here: \`diameter\`?
           => ring R diameter 50 mm, wall 4 mm, at centre floating
    draw electrodes, probs for pupls
                     ^^^^^ error word-unknown “probs” is not known here: \`probes\`?
                     => draw electrodes, probes for pupls
    row A from N to P evry 10 mm
                      ^^^^ error word-unknown “evry” is not known here: \`every\`?
                      => row A from N to P every 10 mm
    change R flaoting
             ^^^^^^^^ error word-unknown “flaoting” is not known here: \`floating\`?
             => change R floating
    probe M att centre
            ^^^ error word-unknown “att” is not known here: \`at\`?
            => probe M at centre
    bar S 10 mm × 120 mm, midway between N und P
                                           ^^^ error word-unknown “und” is not known here: \`and\`?
                                           => bar S 10 mm × 120 mm, midway between N and P
    slit to centre
         ^^ error part-missing A slit runs from one point to another: \`slit from (100, 20) mm to (100, 60) mm\`.
    colour red
    ^^^^^^ error word-unknown “colour” is not understood here.
    reverse R
            ^ error part-missing Only the supply is reversed: \`reverse supply\`.
    12 V
    ^^ error word-unexpected “12” does not belong here: a word that says what it is may be missing.
    ???
    ^ error word-unexpected “?” is not understood here.
  `);
});

test('parts left out', () => {
  checkBlock(`
    bar N
        ^ error part-missing How large is N? Width × height, such as \`10 mm × 120 mm\`.
    bar P at centre positive
                    ^^^^^^^^ error part-missing How large is P? Width × height, such as \`10 mm × 120 mm\`.
    bar Q 10 mm at centre
                ^^ error part-missing A size is width × height, such as 10 mm × 120 mm; a distance goes on with \`right of\`, \`left of\`, \`above\` or \`below\`.
    disc D at centre
              ^^^^^^ error part-missing How large is D? \`diameter 20 mm\`.
    ring R diameter 50 mm at centre
                             ^^^^^^ error part-missing How thick is the metal of R? \`wall 4 mm\`, or \`inside diameter 42 mm\`.
    ring S wall 4 mm at centre
                        ^^^^^^ error part-missing How large is S? \`diameter 50 mm, wall 4 mm\`.
    ring T diameter 50 mm, inside diameter 40 mm, wall 4 mm at centre
                                                       ^^^^ error part-twice Two of \`diameter\`, \`inside diameter\` and \`wall\` are enough: the third follows from them.
    box B 60 × 40 mm at centre
                        ^^^^^^ error part-missing How thick is the metal of B? \`wall 4 mm\`.
    spike K base 20 mm, length 40 mm
                                  ^^ error part-missing Where is K? \`tip at (90, 80) mm\`, or \`on\` an electrode.
    spike L base 20 mm, length 40 mm, tip at centre
                                             ^^^^^^ error part-missing Which way does L point? \`pointing left\`.
    prong M 20 mm × 40 mm on P
                             ^ error part-missing Which way does M point? \`pointing left\`.
    strip G (0, 0) (10, 10) mm
                            ^^ error part-missing How wide is the strip G? \`width 5 mm\`.
    row A from N every 10 mm
               ^ error part-missing To where?
               => row A from N right at 10 mm, 20 mm
               => row A from N to P every 10 mm
    row B from N to P
                     | error part-missing Where along the row? \`every 10 mm\`, \`in 10 steps\`, \`11 readings\`, or \`at 10 mm, 20 mm\`.
    row C from N right every 10 mm
                       ^^^^^^^^^^^ error part-missing A row with a direction has no other end: say \`at\` which distances it is read.
                       => row C from N right at 10 mm, 20 mm
    row D to N
          ^^ error part-missing Where does row D begin? \`from N to P every 10 mm\`.
    row E from N to P 10
                      ^^ error part-missing 10 what? 10 steps are 11 readings.
                      => row E from N to P in 10 steps
                      => row E from N to P 10 readings
    probe W
           | error part-missing Where is W? \`at (120, 80) mm\`, \`at centre of R\`, or \`at A 50 mm\` along a row.
    slit from centre
                    | error part-missing A slit runs from one point to another: \`slit from (100, 20) mm to (100, 60) mm\`.
    paper A4
          ^^ error part-missing Which way does the A4 sheet lie? \`A4 landscape\` or \`A4 portrait\`.
          => paper A4 landscape
          => paper A4 portrait
    paper 240 mm × 160 mm, 5 kΩ per square along x
                                                 ^ error part-missing And along y? \`5 kΩ per square along x, 6 kΩ per square along y\`.
    equipotentials 0.2 V to 1.4 V
                                 | error part-missing Here stands \`every\` and the step: \`0.2 V to 1.4 V every 0.2 V\`.
    draw
        | error part-missing What is drawn? \`draw electrodes, probes\`, \`draw everything\` or \`draw nothing\`.
    draw for pupils
         ^^^ error part-missing What is drawn? \`draw electrodes, probes\`, \`draw everything\` or \`draw nothing\`.
    bar Z 10 mm × 120 mm, midway between N
                                          | error part-missing Between N and which other electrode? \`midway between N and …\`
    bar Y 10 mm × 120 mm right of N
                         ^^^^^ error part-missing How far, from edge to edge? \`100 mm right of N\`.
                         => bar Y 10 mm × 120 mm 100 mm right of N
    field-lines
               | error part-missing How many field lines?
    move R
         ^ error part-missing Where to? \`move R at (60, 80) mm\`, or \`100 mm right of\` another.
    probe X at 50 mm
                    | error part-missing Along which row? \`at A 50 mm\`.
    meter
    ^^^^^ error part-missing What is the resistance of the meter? \`meter 10 MΩ\`.
    row F from N to P 10
                      ^^ error part-missing 10 what? 10 steps are 11 readings.
                      => row F from N to P in 10 steps
                      => row F from N to P 10 readings
    row G from N to P in 10
                         ^^ error part-missing 10 what? 10 steps are 11 readings.
                         => row G from N to P in 10 steps
                         => row G from N to P 10 readings
    hole disc at centre
                 ^^^^^^ error part-missing How large is the hole? \`diameter 20 mm\`.
    outline O
            ^ error part-missing At least three corners are needed: \`(20, 20) (40, 20) (30, 60) mm\`.
    ring U diameter 50 mm, wall 4 mm, opening 10 mm, at centre
                                                     ^^ error part-missing Which way does the opening look? \`opening 10 mm facing left\`.
    field-lines
               | error part-missing How many field lines?
    draw everything for
                       | error part-missing For whom? \`pupils\`, \`teachers\` or \`technicians\`.
  `);
});

test('a row that goes nowhere', () => {
  checkBlock(`
    ring R diameter 50 mm, wall 4 mm, at centre negative
    disc D diameter 10 mm at centre positive
    row F from centre of D every 10 mm
               ^^^^^^^^^^^ error part-missing To where?
               => row F from centre of D right at 10 mm, 20 mm
               => row F from centre of D to R every 10 mm
    row G from centre of D at 10 mm
               ^^^^^^^^^^^ error part-missing To where?
               => row G from centre of D right at 10 mm
               => row G from centre of D to R at 10 mm
    row H from D
               ^ error part-missing To where?
               => row H from D right at 10 mm, 20 mm
               => row H from D to R
  `);
});

test('names', () => {
  checkBlock(`
    bar N_1 10 mm × 120 mm at centre negative
        ^^^ error name-form “N_1” cannot be a name: a letter first, then letters, digits and hyphens.
        => bar N-1 10 mm × 120 mm at centre negative
    bar 10 mm × 120 mm at centre negative
        ^^ error name-missing Here stands the name of the bar: \`bar N …\`.
        => bar N 10 mm × 120 mm at centre negative
    bar 3D 10 mm × 120 mm at centre negative
        ^^ error name-form A name begins with a letter; letters, digits and hyphens follow.
        => bar D3 10 mm × 120 mm at centre negative
    disc diameter 20 mm at centre floating
         ^^^^^^^^ error name-missing The word after \`disc\` is always its name. Is “diameter” one?
         => disc N diameter 20 mm at centre floating
                  ^^ error word-unexpected “20” does not belong here: a word that says what it is may be missing.
    probe current at centre
          ^^^^^^^ error name-reserved \`current\` means something else in the text of a sheet. Another name?
          => probe Current at centre
    row x from N to P every 10 mm
        ^ error name-reserved \`x\` means something else in the text of a sheet. Another name?
        => row X from N to P every 10 mm
    probe X at centre
    bar 电极 10 mm × 120 mm at centre negative
    bar
       | error name-missing Here stands the name of the bar: \`bar N …\`.
       => bar N
    without
           | error name-missing Here stands the name of what is taken away.
  `);
});

test('sizes that are none', () => {
  checkBlock(`
    bar N 0 mm × 120 mm at centre negative
          ^^^^ error number-positive This must be more than zero.
    bar P -10 × 120 mm at centre negative
          ^^^ error number-positive This must be more than zero.
    disc D diameter −5 mm at centre floating
                    ^^^^^ error number-positive This must be more than zero.
    row A from N to P every 0 mm
                            ^^^^ error number-positive This must be more than zero.
    clip N −1 Ω
           ^^^^ error number-positive This cannot be less than zero.
    field-lines 0
                ^ error number-positive At least one of the field lines is needed.
    row B from N to P in 2.5 steps
                         ^^^ error number-whole Only whole numbers of steps make sense.
                         => row B from N to P in 3 steps
  `);
});

test('the same said twice', () => {
  checkBlock(`
    bar N 10 mm × 120 mm at centre negative positive
                                            ^^^^^^^^ error part-twice This is said twice in one line. Which one holds?
    disc D diameter 20 mm, radius 10 mm at centre floating
                                  ^^^^^ error part-twice Diameter and radius are both given. Which one holds?
    spike S base 20 mm, length 40 mm, tip at centre, on P pointing left
                                                        ^ error part-twice \`tip at\` and \`on\` both say where it is. Which one holds?
    paper A4 landscape, 240 mm × 160 mm
          ^^^^^^^^^^^^ error part-twice The paper has a size already. Which one holds?
  `);
});

test('a prong whose length comes first', () => {
  checkBlock(`
    prong S 80 mm × 10 mm, on P pointing left
            ^^^^^^^^^^^^^ note prong-sizes S is 80 mm wide and stands out 10 mm. Turn the sizes round?
            => prong S 10 mm × 80 mm, on P pointing left
    prong T 80 × 10 mm, on P pointing left
            ^^^^^^^^^^ note prong-sizes T is 80 mm wide and stands out 10 mm. Turn the sizes round?
            => prong T 10 mm × 80 mm, on P pointing left
    prong U 10 mm × 10 mm, on P pointing left
  `);
});

test('accepted spellings are no findings', () => {
  checkBlock(`
    PAPER 240 mm * 160 mm, 5 Kilohm per square
    Supply EHT 3 kV, Limit 3 mA
    voltmeter 10 megohms
    disk D radius 1 cm at center of the paper
    bar N 10 mm × 120 mm at (−5, -5) mm Negative # 10,5 mm is no finding here
    draw Electrodes for Students
  `);
});

test('powers of ten', () => {
  checkBlock(`
    paper 2.4e2 mm × 160 mm, 5 kΩ per square
          ^^^^^ error number-power Numbers are written out here, without powers of ten.
          => paper 240 mm × 160 mm, 5 kΩ per square
    bar N 1e−1 cm × 1e99 mm at (60, 80) mm negative
          ^^^^ error number-power
          => bar N 0.1 cm × 1e99 mm at (60, 80) mm negative
                    ^^^^ error number-power
  `);
});

test('prefixes are doubted by the value, not by the letter alone', () => {
  checkBlock(`
    supply cell 1500 mV
    supply eht 0.003 MV
    supply eht 3 MV
               ^^^^ warning unit-unlikely 3 MV is a bolt of lightning. 3 kV?
  `);
});

test('words left out before a bracket, a length, a direction, a name', () => {
  checkBlock(`
    disc D 20 mm at centre floating
           ^^ error part-missing \`diameter\` is missing before the length.
           => disc D diameter 20 mm at centre floating
    ring R diameter 50 mm, 4 mm at centre floating
                           ^ error part-missing \`wall\` is missing before the length.
                           => ring R diameter 50 mm, wall 4 mm at centre floating
    hole diameter 10 mm at centre
         ^^^^^^^^ error part-missing A round hole is a \`disc\`.
         => hole disc diameter 10 mm at centre
    spike S base 5 mm, length 9 mm, on R left
                                         ^^^^ error part-missing \`pointing\` is missing before the direction.
                                         => spike S base 5 mm, length 9 mm, on R pointing left
    slit (1, 2) mm to (3, 4) mm
         ^ error part-missing A slit runs from one point to another
         => slit from (1, 2) mm to (3, 4) mm
    probe M (120, 80) mm
            ^ error part-missing Where is M?
            => probe M at (120, 80) mm
    row A N to P every 10 mm
          ^ error part-missing Where does row A begin?
          => row A from N to P every 10 mm
    probe K at R
               ^ error part-missing Where on R? \`at centre of R\`, or a point such as \`at (120, 80) mm\`.
               => probe K at centre of R
    probe L at A
               ^ error part-missing How far along A? \`at A 50 mm\`.
  `);
});

test('coordinates without round brackets, or with the unit inside', () => {
  checkBlock(`
    probe A at 40, 95 mm
               ^^^^^^^^^ error coordinates-form Coordinates stand in round brackets.
               => probe A at (40, 95) mm
    probe B at [40, 95] mm
               ^^^^^^^^^^^ error coordinates-form Coordinates stand in round brackets.
               => probe B at (40, 95) mm
    row C from 40, 95 mm to (60, 95) mm every 5 mm
               ^^^^^^^^^ error coordinates-form Coordinates stand in round brackets.
               => row C from (40, 95) mm to (60, 95) mm every 5 mm
    probe D at (40, −5 mm)
               ^^^^^^^^^^^ error unit-missing The unit of both coordinates stands behind the bracket, or each has its own.
               => probe D at (40, -5) mm
  `);
});

test('one slip, one finding', () => {
  checkBlock(`
    probe readings at (110, 60) mm
          ^^^^^^^^ error name-reserved
    bar T 10 mm × 10 mm, 20 mm right of P 4 floating
                                          ^ error unit-missing 4 of what?
    bar S 10 mm × 10 mm, 20 mm rigth of P floating
                               ^^^^^ error word-unknown “rigth” is not known here: \`right\`?
                               => bar S 10 mm × 10 mm, 20 mm right of P floating
                               => bar S 10 mm × 10 mm, 20 mm high of P floating
    paper landscape A4, 5 kΩ per square
          ^^^^^^^^^^^^ error word-unexpected The format comes first: \`A4 landscape\`.
          => paper A4 landscape, 5 kΩ per square
    draw electrodes for pupils and teachers
                               ^^^ error word-unexpected A line speaks of one kind of readers
    draw nothing, electrodes
    ^^^^^^^^^^^^^^^^^^^^^^^^ error word-unexpected Nothing, or these parts? Not both.
  `);
});
