/** Fixes, refactorings and what can be done to a whole sheet. */
import { type CodeAction, CodeActionKind, type CodeActionParams } from 'vscode-languageserver';
import { editing, type TextEdit } from '../../shared/index.ts';
import { diagnosticOf } from './convert.ts';
import type { House } from './house.ts';
import { editsOf, spanOf } from './places.ts';
import type { OpenSheet } from './sheets.ts';

export const actionKinds = {
  fixAll: `${CodeActionKind.SourceFixAll}.papervolt`,
  format: `${CodeActionKind.Source}.format.papervolt`,
  rewrite: `${CodeActionKind.RefactorRewrite}.papervolt`,
  extract: `${CodeActionKind.RefactorExtract}.papervolt`,
} as const;

/** Null where the text has changed meanwhile. */
export async function codeActions(
  house: House,
  sheet: OpenSheet,
  { range, context }: CodeActionParams,
): Promise<CodeAction[] | null> {
  const { only } = context;
  const wanted = (kind: string): boolean =>
    only === undefined || only.some((one) => kind === one || kind.startsWith(`${one}.`) || one === '');
  // Actions on the whole text are offered where they are asked for.
  const sources = only === undefined ? [] : [actionKinds.fixAll, actionKinds.format].filter(wanted);
  const span = spanOf(sheet.lines, range);
  // Between the blocks the editor shows what there is to fix: nothing is waited for where it shows nothing.
  const mayFix = context.diagnostics.length > 0 || editing.blocksIn(sheet.draft.sheet, span).length > 0;
  const needsFindings = (mayFix && wanted(CodeActionKind.QuickFix)) || sources.includes(actionKinds.fixAll);
  const examined = needsFindings ? await house.sheets.examination(sheet) : null;
  if (needsFindings && examined === null) return null;
  const findings = examined?.findings ?? [];
  const fixes = mayFix && wanted(CodeActionKind.QuickFix) ? editing.fixesAt(findings, span) : [];
  // Each is tried out before it is offered, which takes time.
  const mayRefactor = wanted(actionKinds.rewrite) || wanted(actionKinds.extract);
  const refactorings = mayRefactor ? editing.refactoringsAt(sheet.draft, span) : [];
  return [
    ...fixes.map((fix) => quickFix(house, sheet, fix)),
    ...refactorings
      .map(({ title, kind, edits }) => action(sheet, title, actionKinds[kind], edits))
      .filter(({ kind }) => wanted(kind)),
    ...sources.flatMap((kind) => sourceAction(sheet, kind, findings)),
  ];
}

function quickFix(
  house: House,
  sheet: OpenSheet,
  { finding, fix, preferred }: editing.OfferedFix,
): CodeAction {
  return {
    ...action(sheet, fix.title, CodeActionKind.QuickFix, fix.edits),
    diagnostics: [diagnosticOf(sheet, finding, house.explanations)],
    isPreferred: preferred,
  };
}

function sourceAction(
  sheet: OpenSheet,
  kind: string,
  findings: Parameters<typeof editing.certainEdits>[0],
): CodeAction[] {
  const { draft, text } = sheet;
  const [title, edits] =
    kind === actionKinds.fixAll
      ? ['Apply all certain fixes', editing.certainEdits(findings)]
      : ['Format blocks', editing.formattingEdits(draft.sheet, { from: 0, to: text.length })];
  return edits.length === 0 ? [] : [action(sheet, title, kind, edits)];
}

function action<K extends string>(
  { uri, lines }: OpenSheet,
  title: string,
  kind: K,
  edits: readonly TextEdit[],
): CodeAction & { kind: K } {
  return { title, kind, edit: { changes: { [uri]: editsOf(lines, edits) } } };
}
