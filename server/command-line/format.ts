/** `papervolt format`: our blocks tidied in place; every other line stays as it is. */
import { readFileSync } from 'node:fs';
import writeFileAtomic from 'write-file-atomic';
import { formatSheet } from '../../shared/index.ts';
import { type Input, readInputs } from './inputs.ts';
import { CommandFailure, type ExitStatus, type Output } from './output.ts';

export interface FormatOptions {
  readonly check?: boolean;
  readonly stdinName?: string;
}

export function format(named: readonly string[], options: FormatOptions, output: Output): ExitStatus {
  const inputs = readInputs(named, { folder: process.cwd(), stdinName: options.stdinName ?? null });
  const changed = inputs.filter((input) => formatSheet(input.text) !== input.text);
  if (options.check) {
    for (const { name } of changed) output.result(name);
    if (changed.length > 0)
      output.say(`Not formatted: ${changed.length} of ${inputs.length}. Run papervolt format on them.`);
    return changed.length > 0 ? 1 : 0;
  }
  for (const input of inputs) {
    if (input.path === null) process.stdout.write(formatSheet(input.text));
    else if (changed.includes(input)) rewrite(input.path, input, output);
  }
  return 0;
}

/** A file that is not UTF-8 would lose characters: it is left alone. */
function rewrite(path: string, input: Input, output: Output): void {
  if (!Buffer.from(input.text, 'utf8').equals(readFileSync(path))) {
    throw new CommandFailure(
      `${input.name}: is not UTF-8, or changed while it was read. Nothing was written.`,
    );
  }
  writeFileAtomic.sync(path, formatSheet(input.text));
  output.say(`${input.name}: formatted`);
}
