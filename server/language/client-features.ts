/** What the editor at the other end can do and how it has been set up, read once from its first message. */
import type { ClientCapabilities, InitializeParams } from 'vscode-languageserver';

export interface ClientFeatures {
  /** It asks for findings; otherwise they are sent to it. */
  readonly pullsFindings: boolean;
  readonly snippets: boolean;
  /** Drawings as images in hovers: asked for by `initializationOptions.drawings`, since not every editor can show them. */
  readonly drawings: boolean;
  /** Formatting of texts and ranges: not offered where `initializationOptions.formatting` is false. */
  readonly formatting: boolean;
  /** It has our commands, `initializationOptions.commands`: a lens may then name one. */
  readonly commands: boolean;
  /** It reads the files of the workspace for us, `initializationOptions.files`. */
  readonly files: boolean;
  /** Where a finding is explained, `initializationOptions.explanations`: a URI with `{code}` in it. */
  readonly explanations: string | null;
  /** It can ask before it makes some of the changes of an edit. */
  readonly confirmsChanges: boolean;
  /** Parameters of signatures by their place in the label. */
  readonly labelOffsets: boolean;
  /** It tells of changed files where it is asked to. */
  readonly watchesFiles: boolean;
  /** What it asks for anew where it is told to. */
  readonly refreshes: { readonly hints: boolean; readonly lenses: boolean };
  /** URIs of the folders it works in. */
  readonly folders: readonly string[];
}

export function clientFeatures(params: InitializeParams): ClientFeatures {
  const { capabilities, initializationOptions: options } = params;
  const { textDocument, workspace } = capabilities;
  const explanations = optionOf(options, 'explanations');
  return {
    pullsFindings: textDocument?.diagnostic !== undefined,
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    drawings: optionOf(options, 'drawings') === true,
    formatting: optionOf(options, 'formatting') !== false,
    commands: optionOf(options, 'commands') === true,
    files: optionOf(options, 'files') === true,
    explanations: typeof explanations === 'string' ? explanations : null,
    confirmsChanges: confirmsChanges(capabilities),
    labelOffsets:
      textDocument?.signatureHelp?.signatureInformation?.parameterInformation?.labelOffsetSupport === true,
    watchesFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    refreshes: {
      hints: workspace?.inlayHint?.refreshSupport === true,
      lenses: workspace?.codeLens?.refreshSupport === true,
    },
    folders: foldersOf(params),
  };
}

function confirmsChanges({ workspace, textDocument }: ClientCapabilities): boolean {
  const edits = workspace?.workspaceEdit;
  return (
    edits?.documentChanges === true &&
    edits.changeAnnotationSupport !== undefined &&
    textDocument?.rename?.honorsChangeAnnotations === true
  );
}

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): readonly string[] {
  if (workspaceFolders) return workspaceFolders.map(({ uri }) => uri);
  return rootUri === null ? [] : [rootUri];
}

/** A member of what an editor sent, which may be anything. */
export function optionOf(options: unknown, name: string): unknown {
  return typeof options === 'object' && options !== null ? Reflect.get(options, name) : undefined;
}
