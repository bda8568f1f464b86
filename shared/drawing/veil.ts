/** A veil over a drawing of what no longer holds: the same drawing of the same size, paler. */
import { themes } from './pens.ts';

/** `svg` is a whole drawing of ours. */
export function veiled(svg: string): string {
  const [, left = '0', top = '0', width = '0', height = '0'] =
    /viewBox="(\S+) (\S+) (\S+) (\S+)"/u.exec(svg) ?? [];
  const veil = `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${themes.print.ground}" fill-opacity="0.6"/>`;
  return svg.replace(/<\/svg>\s*$/u, `${veil}\n</svg>\n`);
}
