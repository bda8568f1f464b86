/** Findings at the top of a sheet that is not ready: in plain words, with the line where each stands. */
import type { Finding, Severity } from '../../findings/finding.ts';
import { lineIndex, type Source } from '../../text/source.ts';
import { type Html, html, nothing, withCode } from './html.ts';

const order: readonly Severity[] = ['stop', 'error', 'warning'];

const severityWords: Readonly<Record<Severity, string>> = {
  stop: 'Not a pupil practical',
  error: 'Error',
  warning: 'Warning',
  note: 'Note',
};

/** Nothing for a sheet without errors and stops. */
export function findingsBox(findings: readonly Finding[], source: Source): Html {
  if (!findings.some(({ severity }) => severity === 'error' || severity === 'stop')) return nothing;
  const lines = lineIndex(source.text);
  const items = order
    .flatMap((severity) => findings.filter((finding) => finding.severity === severity))
    .map((finding) => findingItem(finding, lines.placeOf(finding.span.from).line + 1));
  return html`<section class="findings">
<h2>To mend before this sheet is handed out</h2>
<ul>
${items}</ul>
<p>This list is not complete: it holds only what the program looks for.</p>
</section>
`;
}

function findingItem({ severity, message, hints }: Finding, line: number): Html {
  const more = hints.length === 0 ? null : html`<br>${withCode(hints.join(' '))}`;
  return html`<li><span class="where">${severityWords[severity]}, line ${line}.</span> ${withCode(message)}${more}</li>\n`;
}
