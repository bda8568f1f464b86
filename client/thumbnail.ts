/** A drawing as small as a line of text. */

/** Height of a line, px. */
const height_px = 18;

/** The SVG with a size of its own in px, as a data URI; null for what has no view box to take the proportions from. */
export function thumbnail(svg: string): string | null {
  const [, width = 0, height = 0] = (
    /^<svg [^>]*?viewBox="[-\d.]+ [-\d.]+ ([\d.]+) ([\d.]+)"/u.exec(svg) ?? []
  ).map(Number);
  if (!(width > 0 && height > 0)) return null;
  const head = /^<svg [^>]*>/u.exec(svg)?.[0] ?? '';
  const width_px = Math.round((height_px * width) / height);
  const sized = head
    .replace(/ (?:width|height)="[^"]*"/gu, '')
    .replace('<svg ', `<svg width="${width_px}px" height="${height_px}px" `);
  return `data:image/svg+xml;base64,${base64(sized + svg.slice(head.length))}`;
}

/** The editor writes the address into a style sheet without its escapes, which only this form stands. */
function base64(text: string): string {
  return btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
}
