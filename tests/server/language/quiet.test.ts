/** Between the blocks the server has nothing to say, and says so without solving, waiting or reading anew. */
import { PassThrough } from 'node:stream';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import {
  createProtocolConnection,
  type ProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { serve } from '../../../server/language/serve.ts';
import { draftSheet } from '../../../shared/index.ts';
import { twoSetups } from '../../editing/cursor.ts';
import { pulling } from './editor.ts';
import { SlowThreads } from './threads.ts';

vi.mock(import('../../../shared/index.ts'), async (original) => {
  const core = await original();
  return { ...core, draftSheet: vi.fn(core.draftSheet) };
});

const uri = 'file:///sheets/quiet.md';
const prose = Array.from(
  { length: 2000 },
  (_, i) => `Line ${i} of a **long** text, with M, N and 5 words.`,
).join('\n');

/** A server in this process whose threads never answer, and an editor with one text open. */
async function opened(text: string): Promise<{ connection: ProtocolConnection; threads: SlowThreads }> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const threads = new SlowThreads();
  serve(
    createConnection(ProposedFeatures.all, new StreamMessageReader(up), new StreamMessageWriter(down)),
    threads.start,
  );
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  connection.listen();
  await connection.sendRequest('initialize', { processId: null, rootUri: null, capabilities: pulling });
  const textDocument = { uri, languageId: 'markdown', version: 1, text };
  await connection.sendNotification('textDocument/didOpen', { textDocument });
  await connection.sendRequest('textDocument/documentSymbol', { textDocument: { uri } });
  return { connection, threads };
}

/** Every request about a place, put to a line of prose. */
function asked(connection: ProtocolConnection, line: number): readonly Promise<unknown>[] {
  const position = { line, character: 20 };
  const range = { start: { line, character: 0 }, end: { line, character: 30 } };
  const options = { tabSize: 2, insertSpaces: true };
  const requests: readonly (readonly [string, object])[] = [
    ['textDocument/hover', { position }],
    ['textDocument/completion', { position }],
    ['textDocument/signatureHelp', { position }],
    ['textDocument/definition', { position }],
    ['textDocument/references', { position, context: { includeDeclaration: true } }],
    ['textDocument/documentHighlight', { position }],
    ['textDocument/prepareRename', { position }],
    ['textDocument/rename', { position, newName: 'Q' }],
    ['textDocument/inlayHint', { range }],
    ['textDocument/rangeFormatting', { range, options }],
    ['textDocument/codeAction', { range, context: { diagnostics: [] } }],
    ['textDocument/selectionRange', { positions: [position] }],
    ['papervolt/drawing', { position }],
  ];
  return requests.map(([method, params]) =>
    connection.sendRequest(method, { textDocument: { uri }, ...params }),
  );
}

beforeEach(() => {
  vi.mocked(draftSheet).mockClear();
});

describe('a place between the blocks', () => {
  it('answers null to everything, while nothing is solved yet and without a further task', async () => {
    const { connection, threads } = await opened(`${twoSetups}\n\n${prose}\n`);
    const orders = threads.orders.length;
    for (const line of [25, 1000, 2000]) {
      expect(new Set(await Promise.all(asked(connection, line)))).toEqual(new Set([null]));
    }
    expect(threads.orders.length).toBe(orders);
    expect(draftSheet).toHaveBeenCalledTimes(1);
    connection.dispose();
  });
});

describe('a text without our blocks', () => {
  it('answers null to everything, is never read and starts no thread', async () => {
    const { connection, threads } = await opened(`# Notes\n\n\`\`\`python\nprint(1)\n\`\`\`\n\n${prose}\n`);
    for (const line of [0, 1000]) {
      expect(new Set(await Promise.all(asked(connection, line)))).toEqual(new Set([null]));
    }
    for (const method of ['codeLens', 'documentSymbol', 'foldingRange', 'documentLink']) {
      const params = { textDocument: { uri } };
      expect(await connection.sendRequest(`textDocument/${method}`, params), method).toBe(null);
    }
    expect(threads.started).toBe(0);
    expect(draftSheet).not.toHaveBeenCalled();
    connection.dispose();
  });
});
