/** Answers that are no results. */
import { LSPErrorCodes, ResponseError } from 'vscode-languageserver';

/** Tells the editor to ask again: the text has changed while the answer was being made. */
export function changed(): never {
  throw new ResponseError(LSPErrorCodes.ContentModified, 'The text has changed.');
}

/** Tells the user why something is not done. */
export function refused(why: string): never {
  throw new ResponseError(LSPErrorCodes.RequestFailed, why);
}
