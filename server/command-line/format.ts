/** `papervolt format`: our blocks tidied in place; every other line stays as it is. */
import writeFileAtomic from 'write-file-atomic';
import { formatSheet } from '../../shared/index.ts';
import { type Input, readInputs } from './inputs.ts';
import { type ExitStatus, type Shell, telling } from './shell.ts';

export interface FormatOptions {
  readonly check?: boolean;
  readonly stdinName?: string;
}

export function format(named: readonly string[], options: FormatOptions, shell: Shell): ExitStatus {
  const inputs = readInputs(named, shell, options.stdinName);
  const changed = inputs.filter((input) => formatSheet(input.text) !== input.text);
  if (options.check) {
    for (const { name } of changed) shell.result(name);
    if (changed.length > 0)
      shell.say(`Not formatted: ${changed.length} of ${inputs.length}. Run papervolt format on them.`);
    return changed.length > 0 ? 1 : 0;
  }
  for (const input of inputs) {
    if (input.path === null) shell.resultText(formatSheet(input.text));
    else if (changed.includes(input)) rewrite(input.path, input, shell);
  }
  return 0;
}

function rewrite(path: string, input: Input, { say }: Shell): void {
  telling(input.name, 'cannot be written', () => writeFileAtomic.sync(path, formatSheet(input.text)));
  say(`${input.name}: formatted`);
}
