/** The language server as a program, `--stdio`; started again as a thread, it is the solver. */
import { existsSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { filesOfMachine } from './node-files.ts';
import { serve } from './serve.ts';
import { serveTasks, startThread } from './thread.ts';

if (!isMainThread) serveTasks();
else if (process.argv.includes('--stdio')) {
  serve(
    createConnection(ProposedFeatures.all),
    (listener) => startThread(new URL(import.meta.url), listener),
    { files: filesOfMachine, ...explanations() },
  );
} else {
  process.stderr.write('Papervolt’s language server is started by an editor: language-server.mjs --stdio\n');
  process.exitCode = 2;
}

/** The page on findings where it lies beside the program, as in the package. */
function explanations(): { explanations: string } | object {
  const page = new URL('../docs/findings.md', import.meta.url);
  return existsSync(page) ? { explanations: `${page.href}#{code}` } : {};
}
