/** The program of the panel's page. */
import { type ToExtension, toPage } from '../protocol.ts';
import { PanelPage } from './page.ts';

/** What the editor gives each of its pages, once. */
interface EditorOfPage {
  postMessage(message: ToExtension): void;
  setState(state: unknown): void;
}
declare function acquireVsCodeApi(): EditorOfPage;

const editor = acquireVsCodeApi();
const page = new PanelPage({
  send: (message) => editor.postMessage(message),
  remember: (lookout) => editor.setState(lookout),
});
window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  const message = toPage.read(data);
  if (message !== null) page.hear(message.value);
});
editor.postMessage({ kind: 'ready' });
