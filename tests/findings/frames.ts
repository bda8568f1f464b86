/** Completes the excerpt of an explanation to a text that can be examined. */
import type { Explanation } from '../../shared/findings/explanations/explanation.ts';

/** Where the notes on safety stand: in the text, where an excerpt is about them, or in another document. */
export type Notes = 'here' | 'elsewhere';

const front = `---
risk-assessment: RA 12 of 2026-03-12
next-review: 2027-03-12
safety: kept-in "Laboratory notes"
---

`;

/** Two bars on paper, as lines by what they say. */
const bench: Readonly<Record<string, string>> = {
  paper: 'paper 240 mm × 160 mm, 5 kΩ per square',
  supply: 'supply cell 1.5 V, zinc-carbon',
  N: 'bar N 10 mm × 120 mm at (60, 80) mm negative',
  P: 'bar P 10 mm × 120 mm, 100 mm right of N positive',
};

/** The block that excerpts of a sheet speak of, with 0.75 V at M. */
const bars = `\`\`\`electrodes bars
paper 240 mm × 160 mm, 5 kΩ per square
supply cell 1.5 V, zinc-carbon
bar N 10 mm × 120 mm at (65, 80) mm negative
bar P 10 mm × 120 mm, 100 mm right of N positive
probe M at (120, 80) mm
row A from N to P every 10 mm
\`\`\``;

export function framed(from: Explanation['from'], excerpt: string, notes: Notes = 'elsewhere'): string {
  if (from === 'department') return excerpt;
  if (excerpt.startsWith('---')) return `${excerpt}\n\n${bars}\n`;
  const head = notes === 'here' ? '' : front;
  if (from === 'block') return head + inBlock(excerpt);
  // A block that stands on its own is the whole bench; one that is like another needs the other.
  const whole = /^```electrodes(?! \S+ like)/mu.test(excerpt);
  return whole ? `${head}${excerpt}\n` : `${head}${bars}\n\n${excerpt}\n`;
}

/** Lines of the bench that the excerpt gives itself are left to it. */
function inBlock(excerpt: string): string {
  const given = excerpt.split('\n').map((line) => {
    const [word = '', name = ''] = line.split(/\s+/u);
    return word === 'bar' ? name : word;
  });
  const rest = Object.entries(bench).flatMap(([key, line]) => (given.includes(key) ? [] : [line]));
  return ['```electrodes bars', ...rest, excerpt, '```', ''].join('\n');
}
