/** From the core's records to the protocol's. */
import {
  type CodeAction,
  CodeActionKind,
  type CodeLens,
  type CompletionItem,
  CompletionItemKind,
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentSymbol,
  InsertTextFormat,
  MarkupKind,
  SymbolKind,
} from 'vscode-languageserver';
import type { editing, Finding, LineIndex, Severity } from '../../shared/index.ts';
import { editsOf, rangeOf } from './places.ts';
import type { OpenSheet } from './sheets.ts';

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  stop: DiagnosticSeverity.Error,
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};

export function diagnosticOf({ uri, lines }: Pick<OpenSheet, 'uri' | 'lines'>, finding: Finding): Diagnostic {
  return {
    range: rangeOf(lines, finding.span),
    severity: severities[finding.severity],
    code: finding.code,
    source: 'papervolt',
    message: [finding.message, ...finding.hints].join('\n'),
    ...(finding.related.length === 0
      ? {}
      : {
          relatedInformation: finding.related.map(({ span, message }) => ({
            location: { uri, range: rangeOf(lines, span) },
            message,
          })),
        }),
  };
}

export function quickFix(sheet: OpenSheet, { finding, fix, preferred }: editing.OfferedFix): CodeAction {
  return {
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnosticOf(sheet, finding)],
    isPreferred: preferred,
    edit: { changes: { [sheet.uri]: editsOf(sheet.lines, fix.edits) } },
  };
}

const itemKinds: Readonly<Record<editing.Completion['kind'], CompletionItemKind>> = {
  word: CompletionItemKind.Keyword,
  name: CompletionItemKind.Variable,
  unit: CompletionItemKind.Unit,
  key: CompletionItemKind.Property,
  value: CompletionItemKind.Value,
};

/** `order` keeps the core's order, which begins with the likeliest. */
export function completionItem(
  lines: LineIndex,
  completion: editing.Completion,
  order: number,
  snippets: boolean,
): CompletionItem {
  const { kind, label, detail, help, text, span } = completion;
  const filled = snippets && text.includes('«');
  return {
    label,
    kind: itemKinds[kind],
    detail,
    ...(help === '' ? {} : { documentation: { kind: MarkupKind.Markdown, value: help } }),
    sortText: String(order).padStart(4, '0'),
    insertTextFormat: filled ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    textEdit: { range: rangeOf(lines, span), newText: filled ? snippetText(text) : plainText(text) },
  };
}

/** What stands between « and » becomes a numbered place. */
function snippetText(text: string): string {
  let place = 0;
  return text
    .replace(/[\\$}]/gu, '\\$&')
    .replace(/«([^»]*)»/gu, (_, example: string) => `\${${++place}:${example}}`);
}

const plainText = (text: string): string => text.replace(/[«»]/gu, '');

const symbolKinds: Readonly<Record<editing.SheetSymbol['kind'], SymbolKind>> = {
  setup: SymbolKind.Module,
  electrode: SymbolKind.Object,
  probe: SymbolKind.Field,
  row: SymbolKind.Array,
};

export function documentSymbol(lines: LineIndex, symbol: editing.SheetSymbol): DocumentSymbol {
  return {
    name: symbol.name,
    detail: symbol.detail,
    kind: symbolKinds[symbol.kind],
    range: rangeOf(lines, symbol.span),
    selectionRange: rangeOf(lines, symbol.nameSpan),
    children: symbol.children.map((child) => documentSymbol(lines, child)),
  };
}

export function codeLens(
  lines: LineIndex,
  { span, text }: ReturnType<typeof editing.lensesOf>[number],
): CodeLens {
  return { range: rangeOf(lines, span), command: { title: text, command: '' } };
}

const tokenTypes = { word: 'keyword', name: 'variable', number: 'number', unit: 'type', remark: 'comment' };

/** Names of the protocol for the core's kinds of paint. */
export const tokenLegend = (kinds: typeof editing.paintKinds): string[] =>
  kinds.map((kind) => tokenTypes[kind]);

/** Five numbers a token: lines and columns after the one before, length, type, no modifier. */
export function tokenData(
  lines: LineIndex,
  painted: ReturnType<typeof editing.paintOf>,
  kinds: typeof editing.paintKinds,
): number[] {
  let line = 0;
  let column = 0;
  return painted.flatMap(({ kind, span }) => {
    const at = lines.placeOf(span.from);
    const step = [at.line - line, at.line === line ? at.column - column : at.column];
    line = at.line;
    column = at.column;
    return [...step, span.to - span.from, kinds.indexOf(kind), 0];
  });
}
