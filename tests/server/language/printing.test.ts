/** Prints, asked of a real server: the same bytes as the command line writes, and the reason where a reader gets none. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { audiences, editing, examineSheet, newSheets, printSheets } from '../../../shared/index.ts';
import { Editor, pulling } from './editor.ts';

let editor: Editor;
beforeAll(async () => {
  editor = await Editor.start(pulling);
});
afterAll(async () => {
  expect(await editor.stop()).toBe(0);
});

const sheet = newSheets.find(({ id }) => id === 'hollow-ring')?.text ?? '';
const printed = (text: string, name: string): Promise<editing.PrintAnswer | null> =>
  editor.open(text, name).ask(editing.messages.print, {});

test('every reader gets what the command line prints', async () => {
  const answer = await printed(sheet, 'hollow.md');
  expect(answer?.withheld).toEqual([]);
  expect(answer?.prints).toEqual(printSheets(examineSheet({ name: 'hollow.md', text: sheet }), audiences));
});

test('a sheet with an error is printed for teachers alone, and says why', async () => {
  const answer = await printed(sheet.replace('at centre of R', 'at centre of Q'), 'wrong.md');
  expect(answer?.prints.map(({ suffix }) => suffix)).toEqual(['teachers']);
  expect(answer?.withheld).toEqual(['Not printed for pupils and technicians: the sheet has errors.']);
});

test('a text that is no sheet has no prints', async () => {
  expect(await printed('# Plain\n', 'plain.md')).toBeNull();
});
