/** Reads `# allow CODE because REASON` in the remark of a line; it speaks of the next line. */
import { catalogue } from '../findings/catalogue.ts';
import { type Finding, finding } from '../findings/finding.ts';
import type { Excerpt } from '../text/excerpt.ts';
import { remarkAt } from './tokens.ts';
import type { Allowance } from './tree.ts';

export interface AllowanceReading {
  readonly allowance: Allowance | null;
  readonly findings: readonly Finding[];
}

const nothing: AllowanceReading = { allowance: null, findings: [] };

export function readAllowance(excerpt: Excerpt, index: number): AllowanceReading {
  const line = excerpt.lines[index];
  if (line === undefined) return nothing;
  const from = remarkAt(line.text);
  const remark = line.text.slice(from).trimEnd();
  const [begin, code = '', rest = ''] = /^#\s*allow(?:\s+(\S+))?(?:\s+(\S.*))?$/u.exec(remark) ?? [];
  if (begin === undefined) return nothing;
  const span = { from: line.at + from, to: line.at + from + remark.length };
  const reason = /^because\s+(\S.*)$/u.exec(rest)?.[1];
  if (reason !== undefined && /^[a-z]+(?:-[a-z]+)*$/u.test(code)) {
    return { allowance: { code, reason, covers: nextLine(excerpt, index), span }, findings: [] };
  }
  // A remark may begin with the word by chance; with a code behind it, it is meant.
  if (!Object.hasOwn(catalogue, code)) return nothing;
  const message = `Say why: \`# allow ${code} because …\`.`;
  return { allowance: null, findings: [finding('allow-form', { span, message })] };
}

/** The next line that is more than a remark: allowances may stand one above the other. */
function nextLine(excerpt: Excerpt, index: number): Allowance['covers'] {
  const next = excerpt.lines.slice(index + 1, index + 20).find((line) => !/^\s*#/u.test(line.text));
  if (next !== undefined) return { from: next.at, to: next.at + next.text.length };
  return { from: excerpt.span.to, to: excerpt.span.to };
}
