/** What the server answers: each request is read, put to the core and written in the protocol's words. */
import {
  type CodeAction,
  type CodeActionParams,
  type CodeLens,
  type CompletionItem,
  type DocumentHighlight,
  DocumentHighlightKind,
  type DocumentLink,
  type DocumentSymbol,
  FoldingRange,
  type Hover,
  type InlayHint,
  InlayHintKind,
  type Location,
  type LocationLink,
  type Position,
  type Range,
  type SelectionRange,
  type SignatureHelp,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { editing, isSheet } from '../../shared/index.ts';
import { codeActions } from './code-actions.ts';
import {
  codeLenses,
  completionItem,
  documentSymbol,
  selectionRange,
  signatureHelp,
  tokenData,
} from './convert.ts';
import type { House } from './house.ts';
import { hover } from './hovers.ts';
import { editsOf, offsetOf, positionOf, rangeOf, spanOf } from './places.ts';
import { changed, refused } from './reply.ts';
import type { OpenSheet } from './sheets.ts';
import { shownDrawing } from './shown-drawing.ts';

interface Named {
  readonly all: readonly editing.Occurrence[];
  readonly found: editing.Occurrence | null;
}

export class Requests {
  private readonly house: House;

  constructor(house: House) {
    this.house = house;
  }

  hover(sheet: OpenSheet, position: Position): Promise<Hover | null> {
    return hover(this.house, sheet, position);
  }

  /** The drawing of the block or drawing insert at a place, as an SVG document. */
  async drawing(sheet: OpenSheet, position: Position): Promise<editing.ShownDrawing | null> {
    const block = editing.blockMeant(sheet.draft, offsetOf(sheet.lines, position));
    return block === null ? null : shownDrawing(this.house, sheet, block);
  }

  /** Null at once for a range without blocks. */
  async inlayHints(sheet: OpenSheet, range: Range): Promise<InlayHint[] | null> {
    const { draft, lines } = sheet;
    const { from, to } = spanOf(lines, range);
    const { settings, sheets } = this.house;
    if (!settings.switches.hints || editing.blocksIn(draft.sheet, { from, to }).length === 0) return null;
    return editing
      .hintsOf((await sheets.shown(sheet)) ?? changed())
      .filter(({ at }) => at >= from && at <= to)
      .map(({ at, text }) => ({
        position: positionOf(lines, at),
        label: text,
        kind: InlayHintKind.Parameter,
        paddingLeft: true,
      }));
  }

  async codeLenses(sheet: OpenSheet): Promise<CodeLens[] | null> {
    const { settings, client, sheets } = this.house;
    if (!settings.switches.lenses || !isSheet(sheet.draft.sheet)) return null;
    return editing
      .lensesOf((await sheets.shown(sheet)) ?? changed())
      .flatMap((lens) => codeLenses(sheet, lens, client.commands));
  }

  completion({ draft, lines }: OpenSheet, position: Position): CompletionItem[] {
    return editing
      .completionsAt(draft, offsetOf(lines, position))
      .map((completion, i) => completionItem(lines, completion, i, this.house.client.snippets));
  }

  signature({ draft, lines }: OpenSheet, position: Position): SignatureHelp | null {
    const help = editing.signatureAt(draft.sheet, offsetOf(lines, position));
    return help === null ? null : signatureHelp(help, this.house.client.labelOffsets);
  }

  symbols({ draft, lines }: OpenSheet): DocumentSymbol[] {
    return editing.symbolsOf(draft.sheet).map((symbol) => documentSymbol(lines, symbol));
  }

  definition(sheet: OpenSheet, position: Position): Location[] | LocationLink[] {
    const { all, found } = this.named(sheet, position);
    const places = found === null ? [] : editing.definitionsOf(all, found);
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

  private occurrences(sheet: OpenSheet, position: Position): readonly editing.Occurrence[] {
    const { all, found } = this.named(sheet, position);
    return found === null ? [] : all.filter(({ thing }) => editing.sameThing(thing, found.thing));
  }

  /** What is named at a place, among all that is named in the sheet. */
  private named({ draft, lines }: OpenSheet, position: Position): Named {
    const offset = offsetOf(lines, position);
    if (!editing.mayName(draft, offset)) return { all: [], found: null };
    const all = editing.occurrencesOf(draft);
    return { all, found: editing.occurrenceAt(all, offset) };
  }

  renamed(sheet: OpenSheet, position: Position): { range: Range; placeholder: string } | null {
    const { found } = this.named(sheet, position);
    return found === null ? null : { range: rangeOf(sheet.lines, found.span), placeholder: found.thing.name };
  }

  /** In the running text only where the editor asks the user first. */
  rename({ draft, lines, uri, version }: OpenSheet, position: Position, to: string): WorkspaceEdit | null {
    const renaming = editing.renameAt(draft, offsetOf(lines, position), to);
    if (renaming === null) return null;
    if ('refusal' in renaming) refused(renaming.refusal);
    const edits = editsOf(lines, renaming.edits);
    if (!this.house.client.confirmsChanges || renaming.prose.length === 0)
      return { changes: { [uri]: edits } };
    const prose = editsOf(lines, renaming.prose).map((edit) => ({ ...edit, annotationId: 'text' }));
    return {
      documentChanges: [{ textDocument: { uri, version }, edits: [...edits, ...prose] }],
      changeAnnotations: { text: { label: 'In the text', needsConfirmation: true } },
    };
  }

  formatting({ draft, lines, text }: OpenSheet, range: Range | null): TextEdit[] {
    const span = range === null ? { from: 0, to: text.length } : spanOf(lines, range);
    return editsOf(lines, editing.formattingEdits(draft.sheet, span));
  }

  async codeActions(sheet: OpenSheet, params: CodeActionParams): Promise<CodeAction[] | null> {
    const actions = (await codeActions(this.house, sheet, params)) ?? changed();
    return actions.length === 0 ? null : actions;
  }

  folds({ draft, lines }: OpenSheet): FoldingRange[] {
    return editing.foldsOf(draft.sheet).flatMap(({ from, to }) => {
      const start = lines.placeOf(from).line;
      const end = lines.placeOf(to).line;
      return end > start ? [FoldingRange.create(start, end)] : [];
    });
  }

  /** Null where no place stands in one of our blocks. */
  selections({ draft, lines }: OpenSheet, positions: readonly Position[]): SelectionRange[] | null {
    const found = positions.map((position) => {
      const spans = editing.selectionsAt(draft.sheet, offsetOf(lines, position));
      return selectionRange(lines, spans);
    });
    if (found.every((one) => one === null)) return null;
    return found.map((one, i) => {
      const position = positions[i] ?? { line: 0, character: 0 };
      return one ?? { range: { start: position, end: position } };
    });
  }

  links({ draft, lines, uri }: OpenSheet): DocumentLink[] | null {
    const links = editing.linksOf(draft.sheet).flatMap(({ span, target }) => {
      const url = resolved(target, uri);
      return url === null ? [] : [{ range: rangeOf(lines, span), target: url }];
    });
    return links.length === 0 ? null : links;
  }

  /** Null where the range, or the whole text, has no block. */
  semanticTokens({ draft, lines, text }: OpenSheet, range: Range | null): { data: number[] } | null {
    const span = range === null ? { from: 0, to: text.length } : spanOf(lines, range);
    if (editing.blocksIn(draft.sheet, span).length === 0) return null;
    const painted = editing
      .paintOf(draft.sheet)
      .filter((one) => one.span.from < span.to && one.span.to > span.from);
    return { data: tokenData(lines, painted, editing.paintKinds) };
  }
}

/** A path from the folder of a text, or a URL. Null for a text that is in no folder. */
function resolved(target: string, base: string): string | null {
  try {
    return new URL(target, base).href;
  } catch {
    return null;
  }
}
