/** Tells the editor to ask anew for what it shows beside a text. */
import { CodeLensRefreshRequest, type Connection, InlayHintRefreshRequest } from 'vscode-languageserver';
import type { ClientFeatures } from './client-features.ts';

type Refreshes = Pick<ClientFeatures, 'refreshes'>;

export function refreshHints(connection: Connection, { refreshes }: Refreshes): void {
  if (refreshes.hints) goOn(connection, connection.sendRequest(InlayHintRefreshRequest.type));
}

export function refreshLenses(connection: Connection, { refreshes }: Refreshes): void {
  if (refreshes.lenses) goOn(connection, connection.sendRequest(CodeLensRefreshRequest.type));
}

/** Nobody waits for the answer; an editor that refuses has it in its log. */
function goOn(connection: Connection, asked: Promise<unknown>): void {
  asked.catch((error: unknown) => connection.console.warn(`The editor did not refresh: ${error}`));
}
