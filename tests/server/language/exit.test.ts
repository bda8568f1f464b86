/** The server ends when the editor has gone, whatever it is doing; a thread that solves keeps nothing alive. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, test } from 'vitest';
import { Editor, plain, program } from './editor.ts';
import { twoSolvable } from './threads.ts';

test('at the end of its input', async () => {
  const editor = await Editor.start(plain);
  const { uri } = editor.open(twoSolvable);
  await editor.findingsFor(uri, 1);
  const exit = once(editor.process, 'exit');
  editor.process.stdin?.end();
  expect(await exit).toEqual([1, null]);
});

test('at the end of its input while it solves', async () => {
  const editor = await Editor.start(plain);
  await editor.open(twoSolvable).ask('textDocument/documentSymbol');
  const exit = once(editor.process, 'exit');
  editor.process.stdin?.end();
  expect(await exit).toEqual([1, null]);
});

test('when the process that the editor named is no more, though its input stays open', async () => {
  const gone = spawn(process.execPath, ['-e', '']);
  await once(gone, 'exit');
  const server: ChildProcess = spawn(process.execPath, [program, '--stdio'], { stdio: 'pipe' });
  const exit = once(server, 'exit');
  const params = { processId: gone.pid, rootUri: null, capabilities: {} };
  const message = JSON.stringify({ jsonrpc: '2.0', id: 1, method: 'initialize', params });
  server.stdin?.write(`Content-Length: ${Buffer.byteLength(message)}\r\n\r\n${message}`);
  expect(await exit).toEqual([1, null]);
}, 15_000);
