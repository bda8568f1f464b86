/** The drawing of the block that the cursor is in, or of the one above it. */
import * as vscode from 'vscode';
import { type editing, messages } from '../shared/index.ts';
import type { House } from './house.ts';

/** Null where there is no block, or none with a paper. */
export async function drawingAt(
  { server }: Pick<House, 'server'>,
  uri: string,
  position: editing.Place,
): Promise<editing.EditorDrawing | null> {
  const ask = (place: editing.Place) => ({ textDocument: { uri }, position: place });
  const here = await server.request<editing.EditorDrawing | null>(messages.drawing, ask(position));
  if (here !== null) return here;
  const above = await server.request<editing.PanelDrawing | null>(messages.panel, ask(position));
  const place = above?.handles[0]?.place;
  return place === undefined ? null : server.request(messages.drawing, ask(place));
}

/** Of the sheet in front; says so where there is nothing to draw. */
export async function drawingInFront(house: House): Promise<editing.EditorDrawing | null> {
  const { editor } = house.front;
  const drawing =
    editor === null ? null : await drawingAt(house, editor.document.uri.toString(), editor.selection.active);
  if (drawing === null) {
    const said = vscode.l10n.t('There is no drawing here. Put the cursor in a block of a sheet.');
    void vscode.window.showInformationMessage(said);
  }
  return drawing;
}
