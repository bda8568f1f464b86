/** Carries out allowances: findings that a sheet's author has considered are silenced, and allowances that silence nothing are named. */
import { nearest } from '../block/nearest.ts';
import { catalogue } from '../findings/catalogue.ts';
import { type Finding, type Fix, finding } from '../findings/finding.ts';
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
    .map((allowance) => (refused.has(allowance) ? cannot(allowance, sheet) : needless(allowance, sheet)));
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

function cannot({ code, span }: SheetAllowance, { source }: Sheet): Finding {
  const message = `\`${code}\` says that this is no practical for pupils as it is written. It stays.`;
  return finding('allow-stop', { span, message, fixes: [removal(source.text, span)] });
}

function needless({ code, span }: SheetAllowance, { source }: Sheet): Finding {
  const out = removal(source.text, span);
  if (Object.hasOwn(catalogue, code)) {
    const message = `Nothing on the next line needs \`${code}\` to be allowed.`;
    return finding('allow-unused', { span, message, hints: ['Take this allowance out.'], fixes: [out] });
  }
  const meant = nearest(code, Object.keys(catalogue));
  const question = meant[0] === undefined ? '' : ` \`${meant[0]}\`?`;
  const from = source.text.indexOf(code, span.from);
  const rewritten = meant.map((word) => ({
    title: `Write ${word}`,
    edits: [{ span: { from, to: from + code.length }, text: word }],
    certain: meant.length === 1,
  }));
  const message = `No finding has the code \`${code}\`.${question}`;
  return finding('allow-unused', { span, message, fixes: [...rewritten, out] });
}

/** Takes an allowance out, with its line where it stands alone. It may be needed again when the sheet is mended: never certain. */
function removal(text: string, { from, to }: Span): Fix {
  const start = Math.max(text.lastIndexOf('\n', from - 1), text.lastIndexOf('\r', from - 1)) + 1;
  const end = /\r\n|\n|\r|$/u.exec(text.slice(to));
  const behind = text.slice(to, to + (end?.index ?? 0));
  const alone = /^[\s>]*$/u.test(text.slice(start, from)) && behind.trim() === '';
  const line = { from: start, to: to + behind.length + (end?.[0].length ?? 0) };
  return {
    title: 'Take this allowance out',
    edits: [{ span: alone ? line : { from, to }, text: '' }],
    certain: false,
  };
}
