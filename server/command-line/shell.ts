/** What a command was started from and where it writes: results on standard output, the rest on standard error, one exit status. */
import { readFileSync } from 'node:fs';
import { createColors } from 'picocolors';

/** 0: fine; 1: findings of severity error or stop (warnings too with `--strict`); 2: wrong use or failure. */
export type ExitStatus = 0 | 1 | 2;

export interface Output {
  /** A line of the result. */
  result(line: string): void;
  /** A result that has its own line ends. */
  resultText(text: string): void;
  /** A line for the person at the keyboard. */
  say(line: string): void;
  /** Each stream has its own: one may be a terminal and the other a file. */
  readonly resultColors: Colors;
  readonly sayColors: Colors;
}

type Colors = ReturnType<typeof createColors>;

/** A wrong use or an outside failure, told in one line. Caught once, where the program ends. */
export class CommandFailure extends Error {}

/** What the program knows of the world outside: tests put their own in its place. */
export interface Shell extends Output {
  /** Paths count from here. */
  readonly folder: string;
  /** `2026-03-12`, where the program runs. */
  readonly today: string;
  readStandardInput(): Buffer;
}

/** Runs `work`, and tells what the system refused (no permission, no space, not a folder …) as a failure at `path`. */
export function telling<Result>(path: string, refused: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    throw new CommandFailure(`${path}: ${refused} (${error.message}).`);
  }
}

export function standardShell(): Shell {
  endQuietlyWhenClosed();
  return {
    folder: process.cwd(),
    today: dayOf(new Date()),
    readStandardInput: () => readFileSync(0),
    result: (line) => process.stdout.write(`${line}\n`),
    resultText: (text) => process.stdout.write(text),
    say: (line) => process.stderr.write(`${line}\n`),
    resultColors: colorsOf(process.stdout),
    sayColors: colorsOf(process.stderr),
  };
}

function dayOf(now: Date): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function colorsOf(stream: NodeJS.WriteStream): Colors {
  return createColors(stream.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb');
}

/** `papervolt check sheets/ | head` closes our output early: that is no failure. */
function endQuietlyWhenClosed(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}
