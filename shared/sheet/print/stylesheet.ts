/** The one stylesheet of a printed sheet: black on white, ruled spine at the punched margin, page breaks where a reader would want them. */

export interface SheetStyle {
  readonly paper: 'A4' | 'Letter';
  /** Text at the foot of every page, left. */
  readonly foot: string;
}

/** Width of the text and figure column, mm, on the narrower of the two papers. */
export const column_mm = 172;
/** Between figures side by side, mm. */
export const gutter_mm = 6;
/** Tallest figure in running text, mm: it leaves room for text on its page. */
export const tallest_mm = 160;

export function stylesheet({ paper, foot }: SheetStyle): string {
  return `@page {
  size: ${paper === 'A4' ? 'A4' : 'letter'};
  margin: 13mm 0 17mm 0;
  @bottom-left { content: ${cssString(foot)}; padding-left: 26mm; ${footStyle} }
  @bottom-right { content: "page " counter(page) " of " counter(pages); padding-right: 12mm; ${footStyle} }
}
${base}${head}${text}${parts}${tables}${screen}`;
}

const footStyle =
  'font: 9pt system-ui, -apple-system, "Segoe UI", Roboto, "Liberation Sans", Arial, sans-serif; color: #1C1C1C; vertical-align: top; padding-top: 4mm; white-space: nowrap;';

const base = `
:root { --ink: #1C1C1C; --findings: #B34700; }
* { box-sizing: border-box; }
html { background: #FFF; color: var(--ink); }
body {
  margin: 0; padding: 0 12mm 0 26mm;
  font: 12pt/1.4 system-ui, -apple-system, "Segoe UI", Roboto, "Liberation Sans", Arial, sans-serif;
  font-variant-numeric: tabular-nums; text-align: left; hyphens: none; overflow-wrap: break-word;
  -webkit-print-color-adjust: exact; print-color-adjust: exact;
}
.spine { position: fixed; left: 22mm; top: 0; bottom: 0; border-left: 0.25mm solid var(--ink); }
.notches { position: fixed; right: 5mm; top: 0; width: 5mm; }
.notches svg { display: block; }
`;

const head = `
header { margin-bottom: 5mm; }
.label { display: flex; justify-content: space-between; gap: 6mm; font-size: 10pt; border-bottom: 0.25mm solid var(--ink); padding-bottom: 1.2mm; }
.label div { display: flex; flex-wrap: wrap; gap: 0 4.5mm; }
.label .reader { font-weight: 700; white-space: nowrap; }
h1 { font-size: 20pt; line-height: 1.2; margin: 4mm 0 3mm; }
.fields { display: flex; gap: 6mm; margin: 6mm 0 2mm; }
.fields span { display: flex; align-items: flex-end; gap: 2mm; flex: 1; }
.fields span:first-child { flex: 2; }
.fields i { flex: 1; border-bottom: 0.25mm solid var(--ink); height: 7mm; }
dl.facts { display: grid; grid-template-columns: max-content 1fr max-content 1fr; gap: 0.5mm 4mm; font-size: 10.5pt; margin: 2mm 0; }
dl.facts dt { font-weight: 600; }
dl.facts dd { margin: 0; }
dl.facts dt.wide { grid-column: 1; }
dl.facts dd.wide { grid-column: 2 / -1; }
.duty { font-size: 9.5pt; line-height: 1.3; margin: 2mm 0 0; max-width: none; }
`;

const text = `
h2 { font-size: 15pt; line-height: 1.25; margin: 6mm 0 2mm; }
h3 { font-size: 13pt; line-height: 1.3; margin: 4.5mm 0 1.5mm; }
h4, h5, h6 { font-size: 12pt; margin: 4mm 0 1mm; }
h1, h2, h3, h4, h5, h6 { break-after: avoid; break-inside: avoid; }
p, li { orphans: 3; widows: 3; }
p { margin: 0 0 2.5mm; }
p, li, blockquote, h1, h2, h3 { max-width: 160mm; }
ul, ol { margin: 0 0 2.5mm; padding-left: 8mm; }
li { margin-bottom: 1.5mm; }
li:has(> .mark), li:has(> p > .mark) { break-inside: avoid; }
li > p:last-child { margin-bottom: 0; }
blockquote { margin: 0 0 2.5mm; padding-left: 4mm; border-left: 0.7mm solid var(--ink); }
pre { border: 0.25mm solid var(--ink); padding: 2mm 3mm; white-space: pre-wrap; break-inside: avoid; }
code, pre { font: 10.5pt/1.35 ui-monospace, "Cascadia Mono", Menlo, "Liberation Mono", monospace; }
a { color: inherit; }
img { max-width: 100%; }
hr { border: 0; border-top: 0.25mm solid var(--ink); margin: 5mm 0; }

p:has(> .mark), li:has(> .mark), td:has(> .mark) { max-width: none; padding-right: 12mm; position: relative; }
.mark { display: inline-block; width: 0; }
.mark::before { content: "\\200b"; }
.mark span { position: absolute; right: 0; }
.together { white-space: nowrap; }
`;

const parts = `
.blank { display: inline-block; border-bottom: 0.35mm solid var(--ink); height: 7mm; vertical-align: baseline; }
.lines { margin: 1mm 0 4mm; }
.lines div { height: 10mm; border-bottom: 0.25mm solid var(--ink); }
.lines, .space, .passage.answer { break-before: avoid; }
.lines { break-inside: avoid; }
.space { border: 0.25mm solid var(--ink); margin: 1mm 0 4mm; break-inside: avoid; }
.passage { border: 0.25mm solid var(--ink); padding: 2mm 4mm 1mm; margin: 0 0 4mm; }
.passage > .name { font-weight: 700; margin: 0 0 1mm; font-size: 10.5pt; break-after: avoid; }
.passage.safety { border-width: 0.7mm; break-inside: avoid; }
.passage.answer { border-width: 0 0 0 1.2mm; border-left-style: double; padding-top: 0; }
.passage.tier, .passage.plain { border: 0; padding: 0; }
.passage.tier { padding-left: 7mm; }
.passage.tier > .name { float: left; margin: 0 0 0 -7mm; font-size: 12pt; }
.passage.broken, .findings { border: 0.5mm solid var(--findings); }
.findings { padding: 2mm 4mm 1mm; margin: 0 0 5mm; }
.findings h2 { margin: 0 0 1mm; color: var(--findings); font-size: 13pt; }
.findings ul { list-style: none; padding: 0; }
.limits { border: 0.25mm solid var(--ink); padding: 2mm 4mm 1mm; margin: 0 0 5mm; }
.limits h2 { margin: 0 0 1mm; font-size: 12pt; }
.findings .where { font-weight: 600; }
.unknown { border: 0.5mm solid var(--findings); color: var(--findings); padding: 0 1mm; font-weight: 600; box-decoration-break: clone; -webkit-box-decoration-break: clone; }
.later { border: 0.25mm dashed var(--ink); padding: 3mm 4mm; margin: 0 0 4mm; }
.figures { display: flex; flex-wrap: wrap; gap: 4mm ${gutter_mm}mm; align-items: flex-end; margin: 2mm 0 4mm; break-inside: avoid; }
figure { margin: 0; break-inside: avoid; }
figure svg { display: block; max-width: 100%; height: auto; overflow: visible; }
figcaption { font-size: 11pt; margin-top: 1.5mm; max-width: 160mm; }
figure:not(:only-child) > figcaption { width: 0; min-width: 100%; }
.new-page { break-after: page; }
.hints { break-before: page; }
.hint-mark { font-size: 10.5pt; }
`;

const tables = `
table { border-collapse: collapse; margin: 1mm 0 4mm; break-inside: auto; }
caption { text-align: left; font-size: 11pt; margin-bottom: 1mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { border: 0.25mm solid var(--ink); padding: 1mm 3mm; text-align: left; vertical-align: middle; }
th { font-weight: 600; border-bottom-width: 0.5mm; }
table.short, table:not(:has(tbody tr:nth-child(13))) { break-inside: avoid; }
table.readings td { text-align: right; }
table.readings th { text-align: center; }
table.to-write td, table.to-write th { height: 10mm; min-width: 24mm; }
td.unread { background: repeating-linear-gradient(45deg, #FFF 0 1mm, #C8C8C8 1mm 1.2mm); }
`;

const screen = `
@media screen {
  body { max-width: 210mm; margin: 0 auto; padding-top: 13mm; padding-bottom: 13mm; position: relative; }
  .spine, .notches { position: absolute; }
}
`;

/** A CSS string: everything but letters, digits and blanks as an escape, so that no text can end it or the style element. */
function cssString(text: string): string {
  const escaped = [...text].map((c) =>
    /[A-Za-z0-9 ]/u.test(c) ? c : `\\${(c.codePointAt(0) ?? 0xfffd).toString(16)} `,
  );
  return `"${escaped.join('')}"`;
}
