/** The language server as a web worker; started again by the name of a solver, it is the solver. One file, so that a Blob can hold it. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { serve } from './serve.ts';
import { serveTasksOn, startWebThread, type WebPort, type WebWorker } from './web-thread.ts';

/** Of a worker's world, what is needed here: these programs are checked without the types of browsers. */
declare const self: WebPort & {
  readonly name: string;
  readonly location: { readonly href: string };
  readonly Worker?: new (program: string, options: { readonly name: string }) => WebWorker;
};

const solverName = 'papervolt-solver';

if (self.name === solverName) serveTasksOn(self);
else {
  const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));
  serve(connection, (listener) => startWebThread(anotherOfMe, listener));
}

function anotherOfMe(): WebWorker {
  if (self.Worker === undefined) throw new Error('no workers here');
  return new self.Worker(self.location.href, { name: solverName });
}
