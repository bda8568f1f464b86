/** Completes the excerpt of an explanation to a text that can be examined. */
import type { Explanation } from '../../shared/findings/explanations/explanation.ts';

/** Two bars on paper, as lines by what they say. */
const bench: Readonly<Record<string, string>> = {
  paper: 'paper 240 mm × 160 mm, 5 kΩ per square',
  supply: 'supply cell 1.5 V, zinc-carbon',
  N: 'bar N 10 mm × 120 mm at (60, 80) mm negative',
  P: 'bar P 10 mm × 120 mm, 100 mm right of N positive',
};

/** The block that excerpts of a sheet speak of. */
const bars = [
  '```electrodes bars',
  ...Object.values(bench),
  'probe M at centre',
  'row A from N to P every 10 mm',
  '```',
];

export function framed(from: Explanation['from'], excerpt: string): string {
  if (from === 'department') return excerpt;
  if (from === 'block') return inBlock(excerpt);
  // A block that stands on its own is the whole bench; one that is like another needs the other.
  if (/^```electrodes(?! \S+ like)/mu.test(excerpt)) return `${excerpt}\n`;
  const block = bars.join('\n');
  return excerpt.startsWith('---') ? `${excerpt}\n\n${block}\n` : `${block}\n\n${excerpt}\n`;
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
