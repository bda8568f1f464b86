/** Collects the findings of one setup while its meaning is read. */
import type { FindingCode } from '../findings/catalogue.ts';
import { type Finding, type FindingParts, type Fix, finding, type TextEdit } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';

/** Records a finding; null, so that a reader can return it in place of what could not be read. */
export type Report = (code: FindingCode, parts: FindingParts) => null;

export function reportInto(findings: Finding[]): Report {
  return (code, parts) => {
    findings.push(finding(code, parts));
    return null;
  };
}

export function fixBy(title: string, edits: readonly TextEdit[], certain = false): Fix {
  return { title, edits, certain };
}

/** The fix that writes `text` over a span. */
export function rewrite(span: Span, text: string, certain = false): Fix {
  return fixBy(`Write ${text}`, [{ span, text }], certain);
}
