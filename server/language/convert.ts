/** From the core's records to the protocol's. */
import {
  type CodeLens,
  type CompletionItem,
  CompletionItemKind,
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentSymbol,
  InsertTextFormat,
  MarkupKind,
  type SelectionRange,
  type SignatureHelp,
  SymbolKind,
} from 'vscode-languageserver';
import {
  type editing,
  type Finding,
  type LineIndex,
  type Severity,
  type Span,
  snippetText,
} from '../../shared/index.ts';
import { rangeOf } from './places.ts';
import type { OpenSheet } from './sheets.ts';

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  stop: DiagnosticSeverity.Error,
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};

/** `explanations`: a URI with `{code}` in it. */
export function diagnosticOf(
  { uri, lines }: Pick<OpenSheet, 'uri' | 'lines'>,
  finding: Finding,
  explanations: string | null,
): Diagnostic {
  return {
    range: rangeOf(lines, finding.span),
    severity: severities[finding.severity],
    code: finding.code,
    ...(explanations === null
      ? {}
      : { codeDescription: { href: explanations.replaceAll('{code}', finding.code) } }),
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

const plainText = (text: string): string => text.replace(/[«»]/gu, '');

export const symbolKinds: Readonly<Record<editing.SheetSymbol['kind'], SymbolKind>> = {
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

/** A lens above a block that says what it comes to, below one that shows its drawing where the editor has our commands. */
export function codeLenses(
  { uri, lines }: Pick<OpenSheet, 'uri' | 'lines'>,
  { span, name, text }: editing.Lens,
  commands: boolean,
): CodeLens[] {
  const range = rangeOf(lines, span);
  if (!commands) return [{ range, command: { title: `${name}: ${text}`, command: '' } }];
  const show = { title: 'Show drawing', command: 'papervolt.showDrawing', arguments: [uri, range.start] };
  return [
    { range, command: show },
    { range, command: { title: text, command: '' } },
  ];
}

export function signatureHelp(
  { signatures, active, part }: editing.SignatureHelp,
  labelOffsets: boolean,
): SignatureHelp {
  return {
    signatures: signatures.map(({ label, help, parts }) => ({
      label,
      documentation: help,
      parameters: parts.map(({ from, to, help: about }) => ({
        label: labelOffsets ? [from, to] : label.slice(from, to),
        documentation: about,
      })),
    })),
    activeSignature: active,
    // One behind the last says that none is being written.
    activeParameter: part ?? signatures[active]?.parts.length ?? 0,
  };
}

/** Each within the next. */
export function selectionRange(lines: LineIndex, spans: readonly Span[]): SelectionRange | null {
  return spans.reduceRight<SelectionRange | null>((parent, span) => {
    const range = rangeOf(lines, span);
    return parent === null ? { range } : { range, parent };
  }, null);
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
