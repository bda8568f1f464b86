/** A marked sheet for each family of hazards: where its findings stand and what they say. */
import { test } from 'vitest';
import { checkSafety } from './safety.ts';

test('supplies', () => {
  checkSafety(`
    # Bars

    ::: safety
    ^^^^^^^^^^ warning clips-shorted are missing: join the supply last; disconnect if anything grows warm.
    ^^^^^^^^^^ warning cell-high-current a fuse, or a supply that limits its current.
    ^^^^^^^^^^ note cells-many
    ^^^^^^^^^^ note cells-mixed
    ^^^^^^^^^^ warning power-pack inspected and tested unit; use a unit with an isolated output; ask for its limit or fuse;
    ^^^^^^^^^^ warning voltage-usual Notes on more than 12 V
    ^^^^^^^^^^ note paper-dust
    - Don’t let the croc clips meet.
    :::

    \`\`\`electrodes
    paper   240 mm × 160 mm
    supply  power-pack 20 V
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    \`\`\`

    \`\`\`electrodes cells
    paper   240 mm × 160 mm
    supply  6 cells 1.2 V, nickel-metal-hydride
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    \`\`\`
  `);
});

test('metal and bench', () => {
  checkSafety(`
    # A spike

    The probe is a bare 4 mm plug. Fix the paper with drawing pins, read the multimeter, use 2 m leads.

    \`\`\`electrodes
    paper   240 mm × 160 mm
    supply  cell 1.5 V, zinc-carbon
    copper  0.2 mm
    slit from (100, 20) mm to (100, 40) mm
    bar     N  10 mm × 120 mm at (60, 20) mm  negative
    spike   T  base 20 mm, length 80 mm, tip at (115, 85) mm pointing left  positive
    \`\`\`

    ## Safety
       ^^^^^^ warning copper-edges A note on cut sheet metal
       ^^^^^^ warning sharp-points are missing: the point pierces: carry it by the other end; count it out and in; deburr it
       ^^^^^^ note metal-overhang
       ^^^^^^ warning cutting-tools cut beforehand by a technician
       ^^^^^^ note probe-plug kept from mains sockets
       ^^^^^^ note meter-socket the ampere socket
       ^^^^^^ note pins count the pins
       ^^^^^^ note leads-trailing along the bench
       ^^^^^^ note paper-dust

    Keep the clips apart. Join the cell last; if a lead is warm, disconnect it.
  `);
});

test('materials', () => {
  checkSafety(`
    # Preparing

    ::: technicians
    Solder the leads and wipe the copper with propan-2-ol. Paint the patch with silver paint.
    :::

    \`\`\`electrodes
    paper   240 mm × 160 mm, 5 kΩ per square
    supply  cell 1.5 V, zinc-carbon
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    \`\`\`

    **Safety.** Keep the clips apart. Join the cell last; if a lead is warm, disconnect it. Wash your hands.
      ^^^^^^ warning conductive-paint ventilate; read its safety data sheet; gloves, none on skin
      ^^^^^^ warning soldering put the iron in its stand; protect the eyes; draw off the fume.
      ^^^^^^ note alcohol
  `);
});

test('demonstrations', () => {
  checkSafety(`
    # Fields in oil

    Your teacher shows semolina in castor oil with an EHT supply at 3 kV.
                                                      ^^^ stop eht-limit is not stated: only one of 5 mA or less

    \`\`\`electrodes
    paper   240 mm × 160 mm, 5 kΩ per square
    supply  cell 1.5 V, zinc-carbon
    bar     N  10 mm × 120 mm at (60, 80) mm  negative
    bar     P  10 mm × 120 mm, 100 mm right of N  positive
    \`\`\`

    ::: safety
    ^^^^^^^^^^ warning oil out of reach while they are on
    ^^^^^^^^^^ warning grain ask about allergies; no tasting; throw it away
    ^^^^^^^^^^ note oil-allergen
    ^^^^^^^^^^ warning eht-demonstration built-in series resistor; switch off and turn to zero before touching; earth it
    ^^^^^^^^^^ warning implants people with pacemakers
    ^^^^^^^^^^ warning sparks-near phones and other electronics
    - Keep the clips apart. Join the cell last; if a lead is warm, disconnect it. Wash your hands.
    :::
  `);
});
