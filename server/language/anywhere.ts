/** The language server for both kinds of editor in one file: a process or a thread of Node, or a web worker. What belongs to the other never runs. */
if (typeof process === 'object' && process.versions?.node !== undefined) void import('./main.ts');
else void import('./web.ts');
