/** The language server as a program, `--stdio`; started again as a thread, it is the solver. */
import { isMainThread } from 'node:worker_threads';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from './serve.ts';
import { serveTasks, startThread } from './thread.ts';

if (!isMainThread) serveTasks();
else if (process.argv.includes('--stdio')) {
  serve(createConnection(ProposedFeatures.all), (listener) =>
    startThread(new URL(import.meta.url), listener),
  );
} else {
  process.stderr.write('Papervolt’s language server is started by an editor: language-server.mjs --stdio\n');
  process.exitCode = 2;
}
