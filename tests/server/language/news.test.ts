/** What the server tells of its own accord. */
import { expect, test } from 'vitest';
import { Editor, pulling } from './editor.ts';
import { twoSolvable } from './threads.ts';

test('which texts have a newer solution, how many are open, and nothing twice', async () => {
  const editor = await Editor.start(pulling);
  const told: unknown[] = [];
  for (const method of ['papervolt/solved', 'papervolt/state'])
    editor.connection.onNotification(method, (params) => void told.push(params));
  const open = editor.open(twoSolvable);
  await open.ask('textDocument/diagnostic');
  await open.ask('textDocument/diagnostic');
  open.replace('cell 1.5 V', 'cell 1.6 V');
  await open.ask('textDocument/diagnostic');
  open.close();
  const last = { state: 'ready', sheets: 0 };
  await expect.poll(() => told.at(-1)).toEqual(last);
  expect(await editor.stop()).toBe(0);
  const solved = told.filter((params) => JSON.stringify(params) === JSON.stringify({ uri: open.uri }));
  expect(solved.length).toBe(4);
  const states = told.filter((params) => typeof params === 'object' && params !== null && 'state' in params);
  for (const [i, state] of states.entries()) expect(state).not.toEqual(states[i + 1]);
});
