/** Carries out allowances: findings that a sheet's author has considered are silenced, and allowances that silence nothing are named. */
import { nearest } from '../block/nearest.ts';
import { catalogue } from '../findings/catalogue.ts';
import { type Finding, finding } from '../findings/finding.ts';
import type { Span } from '../text/span.ts';
import type { Sheet, SheetAllowance } from './sheet.ts';

/**
 * The findings that are left, and one for every allowance that was not needed. A finding is covered where it begins on the line. Findings
 * of severity `stop` stay.
 */
export function applyAllowances(findings: readonly Finding[], sheet: Sheet): readonly Finding[] {
  const allowances = allowancesOf(sheet);
  const used = new Set<SheetAllowance>();
  const refused = new Set<SheetAllowance>();
  const left = findings.filter((one) => {
    const covering = allowances.filter(({ code, covers }) => code === one.code && begins(one.span, covers));
    for (const allowance of covering) (one.severity === 'stop' ? refused : used).add(allowance);
    return covering.length === 0 || one.severity === 'stop';
  });
  const unused = allowances
    .filter((allowance) => !used.has(allowance))
    .map((allowance) => (refused.has(allowance) ? cannot(allowance) : needless(allowance)));
  return [...left, ...unused];
}

/** Allowances in the text and in the blocks, by place. */
function allowancesOf(sheet: Sheet): readonly SheetAllowance[] {
  const inBlocks = sheet.blocks.flatMap(({ block }) => block.allowances);
  return [...sheet.allowances, ...inBlocks].sort((a, b) => a.span.from - b.span.from);
}

function begins(place: Span, covers: Span): boolean {
  return place.from >= covers.from && place.from <= covers.to;
}

function cannot({ code, span }: SheetAllowance): Finding {
  const message = `\`${code}\` says that this is no practical for pupils as it is written. It stays.`;
  return finding('allow-stop', { span, message });
}

function needless({ code, span }: SheetAllowance): Finding {
  if (Object.hasOwn(catalogue, code)) {
    const message = `Nothing on the next line needs \`${code}\` to be allowed.`;
    return finding('allow-unused', { span, message, hints: ['Take this allowance out.'] });
  }
  const [meant] = nearest(code, Object.keys(catalogue));
  const question = meant === undefined ? '' : ` \`${meant}\`?`;
  return finding('allow-unused', { span, message: `No finding has the code \`${code}\`.${question}` });
}
