/** The one escape for text that goes into HTML, XML or SVG, as content or inside quoted attributes. */

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Marks and quotes become entities; control characters and lone surrogates, which XML forbids, become U+FFFD. Tab and line ends stay. */
export function escapeText(text: string): string {
  return text
    .replace(
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
      /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]|\p{Surrogate}/gu,
      '\ufffd',
    )
    .replace(/[&<>"']/g, (mark) => entities[mark] ?? mark);
}
