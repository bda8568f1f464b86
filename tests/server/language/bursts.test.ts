/**
 * After any burst of edits, requests and cancellations, an edited text is in the state of one that is opened afresh: the same findings,
 * values and drawings to the byte. The edits reach the server as changes, so this also holds incremental sync.
 */

import { afterAll, beforeAll, expect, test } from 'vitest';
import { CancellationTokenSource, type Range } from 'vscode-languageserver-protocol/node';
import { twoSetups } from '../../editing/cursor.ts';
import { Editor, type OpenText, pulling } from './editor.ts';

let editor: Editor;
beforeAll(async () => {
  editor = await Editor.start(pulling);
});
afterAll(async () => {
  expect(await editor.stop()).toBe(0);
});

const everything: Range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

/** All that the server says of a text, without its name. */
async function stateOf(open: OpenText): Promise<string> {
  const answers = [
    await open.ask('textDocument/diagnostic'),
    await open.ask('textDocument/inlayHint', { range: everything }),
    await open.ask('textDocument/codeLens'),
    await open.ask('textDocument/documentSymbol'),
    await open.ask('textDocument/foldingRange'),
    await open.ask('textDocument/hover', { position: open.at('```elect') }),
    await open.ask('textDocument/semanticTokens/full'),
    await open.ask('papervolt/drawing', { position: open.at('```elect') }),
  ];
  return JSON.stringify(answers).replaceAll(open.uri, 'URI');
}

/** Numbers from 0 to 1 that are the same in every run (a linear congruence, modulus 2^32). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const pieces = ['5', '1', ' mm', '\n', '𝑉', 'probe Z at (100, 40) mm\n', '# ', ', ', '\r\n', 'M', '```\n'];

function randomEdit(open: OpenText, next: () => number): void {
  const length = open.text.length;
  const from = Math.floor(next() * length);
  const to = Math.min(length, from + (next() < 0.5 ? 0 : Math.floor(next() * 4)));
  const text = pieces[Math.floor(next() * pieces.length)] ?? '';
  const range = { start: open.document.positionAt(from), end: open.document.positionAt(to) };
  open.edit(range, next() < 0.3 ? '' : text);
}

/** Asks and mostly cancels; what comes of it is not looked at. */
function disturb(open: OpenText, next: () => number): void {
  const source = new CancellationTokenSource();
  const methods = [
    'textDocument/diagnostic',
    'textDocument/codeLens',
    'textDocument/documentSymbol',
    'textDocument/foldingRange',
  ];
  const method = methods[Math.floor(next() * methods.length)] ?? '';
  const params = { textDocument: { uri: open.uri } };
  void editor.connection.sendRequest(method, params, source.token).catch(() => null);
  if (next() < 0.7) source.cancel();
}

test.each([1, 2, 3, 4])('burst %i', async (seed) => {
  const next = numbers(seed);
  const open = editor.open(twoSetups, `burst-${seed}.md`);
  for (let i = 0; i < 60; i++) {
    randomEdit(open, next);
    if (next() < 0.3) disturb(open, next);
    if (next() < 0.2) await new Promise((later) => setImmediate(later));
  }
  const back = `\n\n${twoSetups.replaceAll('bars', 'again').replaceAll('swapped', 'anew')}`;
  open.edit({ start: open.document.positionAt(open.text.length), end: everything.end }, back);
  const fresh = editor.open(open.text, `fresh-${seed}.md`);
  expect(await stateOf(open)).toBe(await stateOf(fresh));
  open.close();
  fresh.close();
});

test('dragging an electrode ends where a fresh solution does', async () => {
  const open = editor.open(twoSetups, 'dragged.md');
  for (let x = 60; x <= 90; x++) {
    open.replace(`at (${x}, 80) mm                negative`, `at (${x + 1}, 80) mm                negative`);
    void open.ask('textDocument/diagnostic').catch(() => null);
    await new Promise((later) => setTimeout(later, 5));
  }
  const fresh = editor.open(open.text, 'still.md');
  expect(await stateOf(open)).toBe(await stateOf(fresh));
  expect(await stateOf(open)).toContain('mA');
});
