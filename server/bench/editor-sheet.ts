/** A long sheet for the bench: the blocks of a term's practicals, each among the prose that goes with it. */

/** Blocks with the decimals of a place that the bench types over, marked by `###`. */
const blocks: readonly string[] = [
  `paper   260 mm × 170 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 1 mm
bar     N  10 mm × 140 mm at (75.###, 85) mm                negative
bar     P  10 mm × 140 mm, 100 mm right of N            positive
row     A  from N to P every 10 mm
probe   M  at A 50 mm
equipotentials 0.25 V to 1.25 V every 0.25 V
field-lines 11`,
  `paper   240 mm × 160 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 1 mm, black lead on N
bar     N  10 mm × 120 mm at (60.###, 80) mm                negative
bar     P  10 mm × 120 mm, 100 mm right of N            positive
ring    R  diameter 50 mm, wall 5 mm, midway between N and P  floating
row     A  from N to P every 25 mm
probe   M  at (115, 90) mm
equipotentials 0.2 V to 1.4 V every 0.2 V`,
  `paper   190 mm × 190 mm, 1 kΩ per square
supply  cell 1.5 V, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 0.5 mm
disc    D  diameter 20 mm at (95.###, 95) mm                positive
ring    N  inside diameter 160 mm, wall 5 mm at centre  negative
row     A  from centre of D right at 15 mm, 20 mm, 30 mm, 40 mm, 50 mm, 60 mm, 70 mm
probe   M  at A 40 mm
equipotentials 0.25 V to 1.25 V every 0.25 V
field-lines 12`,
  `paper   260 mm × 170 mm, 5 kΩ per square
supply  cell 1.5 V, internal 0.5 Ω, zinc-carbon
meter   10 MΩ, resolution 0.01 V, range 2 V, probe tip 0.5 mm
bar     N  10 mm × 130 mm at (50.###, 85) mm                negative
spike   T  base 20 mm, length 80 mm, tip at (115, 85) mm pointing left  positive
row     A  from T to N at 5 mm, 10 mm, 20 mm, 30 mm, 40 mm, 50 mm
probe   M  at A 20 mm
equipotentials 0.15 V to 1.35 V every 0.15 V
field-lines 16`,
];

const sentences: readonly string[] = [
  'Clip the electrodes to the paper as drawn and press the clips so that the whole edge touches.',
  'The reading at M is ?{NAME.M}, and the paper between the terminals is ?{NAME.resistance}.',
  'Measure the distance from the edge of the metal to the nearest millimetre; one step is 10 mm.',
  'Join points of equal potential by a smooth line, and write its value, such as 0.75 V, at the end of the line.',
  'A meter of 10 MΩ draws 0.1 µA from the paper, which is little beside the current between the electrodes.',
  'Where the lines crowd the field is strong: there the potential changes by 0.25 V over a few millimetres.',
  'Compare your value with that of the next group, which may differ by 5 % without any mistake of either.',
  'The field points from high potential to low, at a right angle to each line that you have drawn.',
];

export interface LongSheet {
  readonly text: string;
  /** Offsets of the three decimals that are typed over, one place a block. */
  readonly decimals: readonly number[];
  /** Offsets in running text, ends of sentences. */
  readonly prose: readonly number[];
}

/** `lines` lines with `count` blocks, spread evenly. */
export function longSheet(lines: number, count: number): LongSheet {
  const written: string[] = [];
  for (let block = 0; block < count; block++) {
    const name = `setup-${block + 1}`;
    written.push(`## Part ${block + 1}`, '', `\`\`\`electrodes ${name}`);
    written.push(...(blocks[block % blocks.length] ?? '').split('\n'), '```', '');
    const end = Math.round(((block + 1) * lines) / count);
    for (let i = 0; written.length < end; i++) written.push(proseLine(i, block, name));
  }
  const marked = `${written.join('\n')}\n`;
  const decimals = [...marked.matchAll(/###/gu)].map(({ index }) => index);
  let block = 0;
  const text = marked.replaceAll('###', () => decimalsOf(block++));
  return { text, decimals, prose: [...text.matchAll(/\.\n/gu)].map(({ index }) => index) };
}

/** Three digits; as long as the numbers are below 1000, each number gives a setup that was not solved before. */
export const decimalsOf = (number: number): string => String(number % 1000).padStart(3, '0');

/** Paragraphs of three lines, every fifth a question with marks. */
function proseLine(i: number, block: number, name: string): string {
  if (i % 4 === 3) return '';
  const sentence = (sentences[(i + block) % sentences.length] ?? '').replaceAll('NAME', name);
  return i % 20 === 0 ? `${i / 20 + 1}. ${sentence}` : i % 20 < 3 ? `   ${sentence}` : sentence;
}
