/** Where a command writes and how it ends: results on standard output, the rest on standard error, one exit status. */
import { createColors } from 'picocolors';

/** 0: fine; 1: findings of severity error or stop (warnings too with `--strict`); 2: wrong use or failure. */
export type ExitStatus = 0 | 1 | 2;

export interface Output {
  /** A line of the result. */
  result(line: string): void;
  /** A line for the person at the keyboard. */
  say(line: string): void;
  readonly colors: ReturnType<typeof createColors>;
}

/** A wrong use or an outside failure, told in one line. Caught once, where the program ends. */
export class CommandFailure extends Error {}

export function standardOutput(): Output {
  endQuietlyWhenClosed();
  const wanted = process.stdout.isTTY === true && !('NO_COLOR' in process.env) && process.env.TERM !== 'dumb';
  return {
    result: (line) => process.stdout.write(`${line}\n`),
    say: (line) => process.stderr.write(`${line}\n`),
    colors: createColors(wanted),
  };
}

/** `papervolt check sheets/ | head` closes our output early: that is no failure. */
function endQuietlyWhenClosed(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}
