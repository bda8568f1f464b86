/** What an editor may ask of a sheet. All of it is plain records over spans of the text. */

export { meaningKey } from '../setup/meaning-key.ts';
export { completionsAt } from './completion/complete.ts';
export type { Completion } from './completion/completion.ts';
export {
  type EditorDrawing,
  editorDrawing,
  type ShownDrawing,
  staleDrawing,
  whyUnsolved,
} from './drawing.ts';
export { certainEdits, fixesAt, type OfferedFix } from './fixes.ts';
export { foldsOf } from './folding.ts';
export { formattingEdits } from './formatting.ts';
export { hintsOf, type Lens, lensesOf } from './hints.ts';
export { blockMeant, hoverAt, hoverNeeds } from './hover.ts';
export { linksOf } from './links.ts';
export * from './messages.ts';
export { type Handle, handlesOf } from './moving/handles.ts';
export { type Moving, moveHandle } from './moving/move.ts';
export { probeLine } from './moving/probe-line.ts';
export { editedText, supposedSetup } from './moving/supposed.ts';
export {
  definitionsOf,
  mayName,
  type Occurrence,
  occurrenceAt,
  occurrencesOf,
  sameThing,
} from './occurrences.ts';
export { paintKinds, paintOf } from './paint.ts';
export { handlePath } from './panel/handle-path.ts';
export { type PanelPicture, panelPicture } from './panel/picture.ts';
export { blockRemark } from './panel/remark.ts';
export { slipAt } from './panel/slip.ts';
export { blockPlace, blocksIn } from './place.ts';
export { refactoringsAt } from './refactor/offered.ts';
export type { Refactoring } from './refactor/refactoring.ts';
export { renameAt } from './rename.ts';
export { selectionsAt } from './selection.ts';
export { type SignatureHelp, signatureAt } from './signature.ts';
export { type SheetSymbol, symbolsOf } from './symbols.ts';
