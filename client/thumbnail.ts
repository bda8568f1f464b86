/** A drawing as small as a line of text: the paper alone, its metal filled, its equipotentials as plain lines. */

/** Height of a line, px. */
const height_px = 18;

/** Layers of a drawing by the ends of their ids. */
const shown = /^<g id="[^"]*-(?:board|equipotentials|metal)"/u;

/** Lines keep their width however small the drawing is. */
const style = [
  'path{vector-effect:non-scaling-stroke;stroke-dasharray:none;stroke-width:1px}',
  '[id$="-equipotentials"] path{stroke-width:.6px}',
  '[id$="-metal"] g[fill="#FFFFFF"]{fill:#8A4500}[id$="-metal"] path{stroke:none}',
].join('');

/** An SVG as a data URI, with a size of its own in px; null for what shows no paper. */
export function thumbnail(svg: string): string | null {
  const head = /^<svg [^>]*>/u.exec(svg)?.[0];
  const paper = paperOf(svg);
  if (head === undefined || paper === null) return null;
  const { left, top, width, height } = paper;
  const attributes = {
    width: `${Math.round((height_px * width) / height)}px`,
    height: `${height_px}px`,
    viewBox: `${left} ${top} ${width} ${height}`,
  };
  const sized = Object.entries(attributes).reduce(
    (text, [name, value]) => text.replace(new RegExp(` ${name}="[^"]*"`, 'u'), ` ${name}="${value}"`),
    head,
  );
  const [before = '', ...layers] = svg.slice(head.length, svg.lastIndexOf('</svg>')).split(/(?=<g id=)/u);
  const content = [`<style>${style}</style>`, before, ...layers.filter((layer) => shown.test(layer))];
  return `data:image/svg+xml;base64,${base64(`${sized}${content.join('')}</svg>`)}`;
}

/** The paper is the last outline of the board. */
function paperOf(svg: string): { left: number; top: number; width: number; height: number } | null {
  const [, board = ''] = /<g id="[^"]*-board">([\s\S]*?)<g id=/u.exec(svg) ?? [];
  const outline = [...board.matchAll(/ d="([^"]*)"/gu)].at(-1)?.[1] ?? '';
  const numbers = (outline.match(/-?[\d.]+/gu) ?? []).map(Number);
  const xs = numbers.filter((_, i) => i % 2 === 0);
  const ys = numbers.filter((_, i) => i % 2 === 1);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  return width > 0 && height > 0 ? { left, top, width, height } : null;
}

/** The editor writes the address into a style sheet without its escapes, which only this form stands. */
function base64(text: string): string {
  return btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
}
