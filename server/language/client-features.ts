/** What the editor at the other end can do, read once from its first message. */
import type { InitializeParams } from 'vscode-languageserver';

export interface ClientFeatures {
  /** It asks for findings; otherwise they are sent to it. */
  readonly pullsFindings: boolean;
  readonly snippets: boolean;
  /** Drawings as images in hovers: asked for by `initializationOptions.drawings`, since not every editor can show them. */
  readonly drawings: boolean;
  /** Formatting of a whole text: not offered where `initializationOptions.formatting` is false. */
  readonly formatting: boolean;
}

export function clientFeatures({ capabilities, initializationOptions }: InitializeParams): ClientFeatures {
  const options: unknown = initializationOptions;
  const option = (name: string): unknown =>
    typeof options === 'object' && options !== null ? Reflect.get(options, name) : undefined;
  return {
    pullsFindings: capabilities.textDocument?.diagnostic !== undefined,
    snippets: capabilities.textDocument?.completion?.completionItem?.snippetSupport === true,
    drawings: option('drawings') === true,
    formatting: option('formatting') !== false,
  };
}
