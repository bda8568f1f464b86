/** What the server answers: each request is read, put to the core and written in the protocol's words. */
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type CodeLens,
  type CompletionItem,
  type DocumentHighlight,
  DocumentHighlightKind,
  type DocumentSymbol,
  FoldingRange,
  type Hover,
  type InlayHint,
  InlayHintKind,
  type Location,
  type LocationLink,
  LSPErrorCodes,
  MarkupKind,
  type Position,
  type Range,
  ResponseError,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { type Examination, editing, isSheet } from '../../shared/index.ts';
import { base64 } from './base64.ts';
import type { ClientFeatures } from './client-features.ts';
import { codeLens, completionItem, documentSymbol, quickFix, tokenData } from './convert.ts';
import { editsOf, offsetOf, positionOf, rangeOf, spanOf } from './places.ts';
import type { OpenSheet, Sheets } from './sheets.ts';

export const fixAllKind = `${CodeActionKind.SourceFixAll}.papervolt`;
export const formatKind = `${CodeActionKind.Source}.format.papervolt`;

/** Longer hovers are shown as raw text by some editors. */
const longestHover = 90_000;

export class Requests {
  private readonly sheets: Sheets;
  private readonly client: ClientFeatures;

  constructor(sheets: Sheets, client: ClientFeatures) {
    this.sheets = sheets;
    this.client = client;
  }

  /** The examined sheet. Throws what tells the editor to ask again where the text has changed meanwhile. */
  async examined(sheet: OpenSheet): Promise<Examination> {
    return (await this.sheets.examination(sheet)) ?? changed();
  }

  async hover(sheet: OpenSheet, position: Position): Promise<Hover | null> {
    const { draft, lines } = sheet;
    const offset = offsetOf(lines, position);
    const block = editing.hoverNeeds(draft, offset);
    const outcome = block === null ? null : ((await this.sheets.outcome(sheet, block)) ?? changed());
    const solved = outcome?.solved ?? null;
    const solutions = block === null || solved === null ? new Map() : new Map([[block, solved]]);
    const found = editing.hoverAt(draft, solutions, offset);
    if (found === null) return null;
    const value = await this.withDrawing(sheet, found);
    return { range: rangeOf(lines, found.span), contents: { kind: MarkupKind.Markdown, value } };
  }

  private async withDrawing(
    sheet: OpenSheet,
    { text, drawing }: NonNullable<ReturnType<typeof editing.hoverAt>>,
  ): Promise<string> {
    const drawn = drawing === null ? null : await this.sheets.drawing(sheet, drawing);
    if (drawn === null) return text;
    const said = `${text}\n\n${drawn.description}`;
    if (!this.client.drawings) return said;
    const data = base64(drawn.svg);
    const shown = `${text}\n\n![${drawn.title}](data:image/svg+xml;base64,${data})`;
    return shown.length < longestHover ? shown : said;
  }

  /** The drawing of the block or drawing insert at a place, as an SVG document. */
  async drawing(sheet: OpenSheet, position: Position): Promise<editing.EditorDrawing | null> {
    const block = editing.blockMeant(sheet.draft, offsetOf(sheet.lines, position));
    return block === null ? null : this.sheets.drawing(sheet, block);
  }

  async inlayHints(sheet: OpenSheet, range: Range): Promise<InlayHint[]> {
    const { from, to } = spanOf(sheet.lines, range);
    const hints = editing.hintsOf(await this.examined(sheet));
    return hints
      .filter(({ at }) => at >= from && at <= to)
      .map(({ at, text }) => ({
        position: positionOf(sheet.lines, at),
        label: text,
        kind: InlayHintKind.Parameter,
        paddingLeft: true,
      }));
  }

  async codeLenses(sheet: OpenSheet): Promise<CodeLens[]> {
    return editing.lensesOf(await this.examined(sheet)).map((lens) => codeLens(sheet.lines, lens));
  }

  completion({ draft, lines }: OpenSheet, position: Position): CompletionItem[] {
    return editing
      .completionsAt(draft, offsetOf(lines, position))
      .map((completion, i) => completionItem(lines, completion, i, this.client.snippets));
  }

  symbols({ draft, lines }: OpenSheet): DocumentSymbol[] {
    return editing.symbolsOf(draft.sheet).map((symbol) => documentSymbol(lines, symbol));
  }

  definition(sheet: OpenSheet, position: Position): Location[] | LocationLink[] {
    const places = this.occurrences(sheet, position).filter(({ given }) => given);
    return places.map(({ span }) => ({ uri: sheet.uri, range: rangeOf(sheet.lines, span) }));
  }

  references(sheet: OpenSheet, position: Position, withGiven: boolean): Location[] {
    const places = this.occurrences(sheet, position).filter(({ given }) => withGiven || !given);
    return places.map(({ span }) => ({ uri: sheet.uri, range: rangeOf(sheet.lines, span) }));
  }

  highlights(sheet: OpenSheet, position: Position): DocumentHighlight[] {
    return this.occurrences(sheet, position).map(({ span, given }) => ({
      range: rangeOf(sheet.lines, span),
      kind: given ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
  }

  private occurrences({ draft, lines }: OpenSheet, position: Position): readonly editing.Occurrence[] {
    const all = editing.occurrencesOf(draft);
    const found = editing.occurrenceAt(all, offsetOf(lines, position));
    return found === null ? [] : all.filter(({ thing }) => editing.sameThing(thing, found.thing));
  }

  renamed({ draft, lines }: OpenSheet, position: Position): { range: Range; placeholder: string } | null {
    const found = editing.occurrenceAt(editing.occurrencesOf(draft), offsetOf(lines, position));
    return found === null ? null : { range: rangeOf(lines, found.span), placeholder: found.thing.name };
  }

  rename({ draft, lines, uri }: OpenSheet, position: Position, to: string): WorkspaceEdit | null {
    const renaming = editing.renameAt(draft, offsetOf(lines, position), to);
    if (renaming === null) return null;
    if ('refusal' in renaming) throw new ResponseError(LSPErrorCodes.RequestFailed, renaming.refusal);
    return { changes: { [uri]: editsOf(lines, renaming.edits) } };
  }

  formatting({ draft, lines, text }: OpenSheet, range: Range | null): TextEdit[] {
    const span = range === null ? { from: 0, to: text.length } : spanOf(lines, range);
    return editsOf(lines, editing.formattingEdits(draft.sheet, span));
  }

  async codeActions(sheet: OpenSheet, { range, context }: CodeActionParams): Promise<CodeAction[]> {
    const wanted = (kind: string): boolean =>
      context.only === undefined || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
    const { findings } = await this.examined(sheet);
    const { uri, lines, text, draft } = sheet;
    const actions = wanted(CodeActionKind.QuickFix)
      ? editing.fixesAt(findings, spanOf(lines, range)).map((fix) => quickFix(sheet, fix))
      : [];
    // Source actions change the whole text: they are offered where they are asked for.
    if (context.only === undefined) return actions;
    const whole = { from: 0, to: text.length };
    const sources = [
      { title: 'Apply all certain fixes', kind: fixAllKind, edits: editing.certainEdits(findings) },
      {
        title: 'Format blocks',
        kind: formatKind,
        edits: editing.formattingEdits(draft.sheet, whole),
      },
    ];
    const offered = sources
      .filter(({ kind, edits }) => wanted(kind) && edits.length > 0)
      .map(({ title, kind, edits }) => ({
        title,
        kind,
        edit: { changes: { [uri]: editsOf(lines, edits) } },
      }));
    return [...actions, ...offered];
  }

  folds({ draft, lines }: OpenSheet): FoldingRange[] {
    return editing.foldsOf(draft.sheet).flatMap(({ from, to }) => {
      const start = lines.placeOf(from).line;
      const end = lines.placeOf(to).line;
      return end > start ? [FoldingRange.create(start, end)] : [];
    });
  }

  semanticTokens({ draft, lines }: OpenSheet): { data: number[] } | null {
    if (!isSheet(draft.sheet)) return null;
    return { data: tokenData(lines, editing.paintOf(draft.sheet), editing.paintKinds) };
  }
}

function changed(): never {
  throw new ResponseError(LSPErrorCodes.ContentModified, 'The text has changed.');
}
