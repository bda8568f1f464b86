/** Runs texts with marks against the grammars that the manifest contributes, by the engine that editors use. */
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRegistry, type IGrammarConfig } from 'vscode-tmgrammar-test/dist/common/index.js';
import { parseGrammarTestCase, runGrammarTestCase } from 'vscode-tmgrammar-test/dist/unit/index.js';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

interface Manifest {
  readonly contributes: {
    readonly languages: readonly { readonly id: string; readonly configuration: string }[];
    readonly grammars: readonly IGrammarConfig[];
  };
}
export const { contributes }: Manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

/** The grammars of the manifest, beside those of an editor: files that name their scope themselves. */
function registry(others: readonly string[]): ReturnType<typeof createRegistry> {
  const ours = contributes.grammars.map((grammar) => ({ ...grammar, path: join(root, grammar.path) }));
  return createRegistry([...others.map((path) => ({ path, scopeName: '' })), ...ours]);
}

export interface MarkedText {
  /** How many places of the text are marked. */
  readonly marks: number;
  /** `12: at 5 to 9 has no keyword.control.electrodes but …`; line of the file, columns from 0. */
  readonly failures: readonly string[];
}

/** `file` counts from the tests' folder; its first line names the scope, and the sign that begins a line of marks. */
export async function runMarkedText(file: string, others: readonly string[]): Promise<MarkedText> {
  const text = parseGrammarTestCase(readFileSync(join(root, 'tests', file), 'utf8'));
  const failures = await runGrammarTestCase(registry(others), text);
  return {
    marks: text.assertions.reduce((sum, { scopeAssertions }) => sum + scopeAssertions.length, 0),
    failures: failures.map(
      ({ line, start, end, missing, unexpected, actual }) =>
        `${line + 1}: at ${start} to ${end} misses [${missing}], must not have [${unexpected}], has [${actual}]`,
    ),
  };
}
