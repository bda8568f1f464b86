/** The drawing panel beside the editor: one a window, it follows the sheet and the block that the cursor is in. */
import * as vscode from 'vscode';
import { Conversation, type Editor, type Question, type Target } from './conversation.ts';
import { panelHtml } from './html.ts';
import { lookoutForm } from './protocol.ts';
import { conversationWords, pageWords } from './words.ts';

/** What the panel needs from the rest of the extension. */
export interface PanelSurroundings {
  readonly extensionUri: vscode.Uri;
  readonly log: vscode.LogOutputChannel;
  /** Asks the language server, which is started where it does not run yet. Rejects where it cannot answer. */
  request(method: string, params: unknown, token: vscode.CancellationToken): Promise<unknown>;
  /** Fires with the URI of a text whose solution has become newer (`papervolt/solved`). */
  readonly onSolved: vscode.Event<string>;
}

export interface DrawingPanel extends vscode.Disposable {
  /** Opens the panel, or brings it forward, with the block at a place of a sheet. */
  show(uri: vscode.Uri, place: { readonly line: number; readonly character: number }): void;
}

export const panelViewType = 'papervolt.drawing';

/** Registers what brings the panel back after a reload; opens nothing. */
export function createPanel(surroundings: PanelSurroundings): DrawingPanel {
  let open: OpenPanel | null = null;
  const take = (panel: vscode.WebviewPanel): OpenPanel => {
    const taken = new OpenPanel(panel, surroundings);
    open = taken;
    panel.onDidDispose(() => {
      taken.end();
      if (open === taken) open = null;
    });
    return taken;
  };
  const revived = vscode.window.registerWebviewPanelSerializer(panelViewType, {
    async deserializeWebviewPanel(panel, state: unknown) {
      const before = lookoutForm.read(state)?.value;
      const target =
        before === undefined ? null : { uri: before.uri, place: { line: before.line, character: 0 } };
      take(panel).lookAt(cursor() ?? target);
    },
  });
  return {
    show(uri, place) {
      const target = { uri: uri.toString(), place };
      if (open === null) take(newPanel(surroundings)).lookAt(target);
      else open.comeForward(target);
    },
    dispose() {
      revived.dispose();
      open?.close();
    },
  };
}

function newPanel({ extensionUri }: PanelSurroundings): vscode.WebviewPanel {
  const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  return vscode.window.createWebviewPanel(
    panelViewType,
    pageWords().drawing,
    beside,
    webviewOptions(extensionUri),
  );
}

const webviewOptions = (extensionUri: vscode.Uri): vscode.WebviewOptions => ({
  enableScripts: true,
  localResourceRoots: [folderUri(extensionUri, 'dist'), folderUri(extensionUri, 'media')],
});

const folderUri = (extensionUri: vscode.Uri, folder: 'dist' | 'media'): vscode.Uri =>
  folder === 'dist'
    ? vscode.Uri.joinPath(extensionUri, 'dist')
    : vscode.Uri.joinPath(extensionUri, 'client', 'media');

/** Cursor movements that follow each other within this time are one. */
const settled_ms = 80;

class OpenPanel {
  private readonly panel: vscode.WebviewPanel;
  private readonly conversation: Conversation;
  private readonly habits: vscode.Disposable;
  private waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(panel: vscode.WebviewPanel, surroundings: PanelSurroundings) {
    this.panel = panel;
    this.conversation = new Conversation(editorFor(panel, surroundings), conversationWords());
    const { webview } = panel;
    this.habits = vscode.Disposable.from(
      webview.onDidReceiveMessage((data: unknown) => this.conversation.hear(data)),
      vscode.window.onDidChangeActiveTextEditor(() => this.follow()),
      vscode.window.onDidChangeTextEditorSelection(() => this.follow()),
      vscode.workspace.onDidChangeTextDocument(({ document }) => this.changed(document.uri.toString())),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => this.conversation.closed(uri.toString())),
      surroundings.onSolved((uri) => this.changed(uri)),
      panel.onDidChangeViewState(() => this.follow()),
    );
    panel.iconPath = vscode.Uri.joinPath(folderUri(surroundings.extensionUri, 'media'), 'icon.svg');
    webview.options = webviewOptions(surroundings.extensionUri);
    webview.html = pageOf(webview, surroundings.extensionUri);
  }

  lookAt(target: Target | null): void {
    if (target !== null) this.conversation.lookAt(target);
  }

  comeForward(target: Target): void {
    this.panel.reveal(undefined, true);
    this.lookAt(target);
  }

  close(): void {
    this.panel.dispose();
  }

  end(): void {
    clearTimeout(this.waiting);
    this.habits.dispose();
  }

  /** Behind other editors it stands still; its page asks when it is seen again. */
  private follow(): void {
    clearTimeout(this.waiting);
    if (!this.panel.visible) return;
    this.waiting = setTimeout(() => this.lookAt(cursor()), settled_ms);
  }

  private changed(uri: string): void {
    if (this.panel.visible && this.conversation.looksAt?.uri === uri) void this.conversation.refresh();
  }
}

/** Where the cursor is, in Markdown; null elsewhere: the panel then stays where it is. */
function cursor(): Target | null {
  const editor = vscode.window.activeTextEditor;
  if (editor === undefined || editor.document.languageId !== 'markdown') return null;
  const { line, character } = editor.selection.active;
  return { uri: editor.document.uri.toString(), place: { line, character } };
}

function pageOf(webview: vscode.Webview, extensionUri: vscode.Uri): string {
  const address = (folder: 'dist' | 'media', file: string): string =>
    webview.asWebviewUri(vscode.Uri.joinPath(folderUri(extensionUri, folder), file)).toString();
  return panelHtml({
    style: address('media', 'panel.css'),
    script: address('dist', 'panel.js'),
    source: webview.cspSource,
    nonce: freshNonce(),
    words: pageWords(),
  });
}

function freshNonce(): string {
  const bytes = globalThis.crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function editorFor(panel: vscode.WebviewPanel, { request, log }: PanelSurroundings): Editor {
  return {
    ask: (method, params): Question => {
      const cancelling = new vscode.CancellationTokenSource();
      const answer = request(method, params, cancelling.token).finally(() => cancelling.dispose());
      return { answer, cancel: () => cancelling.cancel() };
    },
    post: (message) => void panel.webview.postMessage(message),
    name: (title) => {
      panel.title = vscode.l10n.t('Drawing: {0}', title);
    },
    version: (uri) => documentOf(uri)?.version ?? null,
    async apply(uri, edits) {
      const edit = new vscode.WorkspaceEdit();
      for (const { range, newText } of edits) edit.replace(vscode.Uri.parse(uri), rangeOf(range), newText);
      const done = await vscode.workspace.applyEdit(edit);
      const [first] = edits;
      if (done && first !== undefined) bringIntoView(uri, rangeOf(first.range));
      return done;
    },
    goTo: (uri, place) => void goTo(vscode.Uri.parse(uri), place, log),
    log: (message) => log.warn(message),
    after: (milliseconds, run) => void setTimeout(run, milliseconds),
  };
}

const documentOf = (uri: string): vscode.TextDocument | undefined =>
  vscode.workspace.textDocuments.find((document) => document.uri.toString() === uri);

type Place = Target['place'];

function rangeOf({ start, end }: { readonly start: Place; readonly end: Place }): vscode.Range {
  return new vscode.Range(start.line, start.character, end.line, end.character);
}

const editorOf = (uri: string): vscode.TextEditor | undefined =>
  vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri);

/** Whoever moves something sees which line it has changed; the cursor stays. */
function bringIntoView(uri: string, range: vscode.Range): void {
  editorOf(uri)?.revealRange(range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** In the editor that shows the text already, if there is one. */
async function goTo(uri: vscode.Uri, place: Place, log: vscode.LogOutputChannel): Promise<void> {
  const shown = editorOf(uri.toString());
  const selection = rangeOf({ start: place, end: place });
  try {
    await vscode.window.showTextDocument(uri, {
      viewColumn: shown?.viewColumn ?? vscode.ViewColumn.One,
      selection,
    });
  } catch (error) {
    log.warn(`The panel cannot go to ${uri.toString()}: ${String(error)}`);
  }
}
