/** Takes a drawing that came as text into the page: read as XML, and of it only what drawings are made of. */

const elements: readonly string[] = ['svg', 'title', 'desc', 'g', 'path', 'circle', 'rect', 'text', 'tspan'];

/** Presentation and geometry; nothing that runs, links or loads. */
const attributes: readonly string[] = [
  ...['id', 'role', 'aria-labelledby', 'viewBox', 'x', 'y', 'width', 'height', 'cx', 'cy', 'r', 'd'],
  ...['fill', 'fill-rule', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linecap', 'stroke-linejoin'],
  ...['font-family', 'font-variant', 'font-size', 'font-style', 'text-anchor', 'baseline-shift', 'opacity'],
];

const svgNamespace = 'http://www.w3.org/2000/svg';

/** Null for what is no SVG drawing. */
export function adopted(text: string): SVGSVGElement | null {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  if (root.namespaceURI !== svgNamespace || root.localName !== 'svg') return null;
  const cleaned = document.importNode(root, true);
  clean(cleaned);
  return cleaned instanceof SVGSVGElement ? cleaned : null;
}

function clean(element: Element): void {
  for (const { name } of [...element.attributes]) {
    if (!attributes.includes(name) && name !== 'xmlns') element.removeAttribute(name);
  }
  for (const child of [...element.children]) {
    if (child.namespaceURI === svgNamespace && elements.includes(child.localName)) clean(child);
    else child.remove();
  }
}
