/** The door of the core: all that server, client and command line may use. */
export { nearest } from './block/nearest.ts';
export type { Audience } from './block/tree.ts';
export {
  askOf,
  conclude,
  type Draft,
  draftSheet,
  type Examination,
  examineSheet,
} from './checks/examine.ts';
// By themselves: a bundle that names the whole of editing carries all of it.
export { snippetText } from './editing/completion/completion.ts';
export { fenceCompletions } from './editing/completion/fence.ts';
export * as editing from './editing/index.ts';
export { messages } from './editing/messages.ts';
export { type NewSheet, newSheets } from './editing/new-sheet/new-sheets.ts';
export type { FieldOutcome, FieldRest } from './field/field.ts';
export * as engine from './field/index.ts';
export type { Stages } from './field/solve/stages.ts';
export { type Told, toldFamilies } from './findings/explanations/index.ts';
export type { Finding, Severity, TextEdit } from './findings/finding.ts';
export { printWithin } from './quantity/print.ts';
export { solveCircuit } from './setup/bounds.ts';
export { circuitOf } from './setup/circuit.ts';
export { KnownBlocks } from './setup/known-blocks.ts';
export type { PointReader } from './setup/points.ts';
export { problemOf } from './setup/problem.ts';
export type { PointReading, SetupReadings, SolvedSetup } from './setup/readings.ts';
export { resolveSetups } from './setup/resolve.ts';
export type { Setup } from './setup/setup.ts';
export {
  type Ask,
  fieldKey,
  fieldReader,
  fieldStages,
  type Outcome,
  outcomeOf,
  readingStages,
  unsolvedReadings,
  withFieldLines,
} from './setup/solve-setup.ts';
export type { Department } from './sheet/department/department.ts';
export {
  type DepartmentFiles,
  departmentFor,
  departmentPlaces,
} from './sheet/department/find-department.ts';
export { type DepartmentReading, readDepartment } from './sheet/department/read-department.ts';
export { formatSheet } from './sheet/format-sheet.ts';
export { mayBeSheet } from './sheet/may-be-sheet.ts';
export type { Lookup, PreviewSource, ReadyPiece, Wish } from './sheet/preview/lookup.ts';
export { type PieceWork, pieceWork, previewPieces } from './sheet/preview/pieces.ts';
export { renderSheet } from './sheet/preview/render-sheet.ts';
export { previewRules } from './sheet/preview/rules.ts';
export { type Wanted, wishesOf } from './sheet/preview/wishes.ts';
export { audiences, type Print, printSheets } from './sheet/print/print-sheets.ts';
export { withheldBecause } from './sheet/print/withheld.ts';
export { isSheet, readSheet } from './sheet/read-sheet.ts';
export { fingerprint } from './text/fingerprint.ts';
export { type LineIndex, lineIndex } from './text/source.ts';
export type { Span } from './text/span.ts';
