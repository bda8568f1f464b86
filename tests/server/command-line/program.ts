/** Runs the program in a folder of its own: most often as a function, which is quick, and as a real process where that is the point. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createColors } from 'picocolors';
import { onTestFinished } from 'vitest';
import { papervolt } from '../../../server/command-line/program.ts';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../../..');

export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Folder {
  readonly path: string;
  write(name: string, text: string): void;
  read(name: string): string;
  list(name?: string): string[];
  /** `papervolt ARGS`, `input` being what stands on standard input. */
  run(args: readonly string[], input?: string): Ran;
}

/** A new folder with these files; it goes when the test is over. */
export function folder(files: Readonly<Record<string, string>> = {}): Folder {
  const path = mkdtempSync(join(tmpdir(), 'papervolt-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  const handle: Folder = {
    path,
    write(name, text) {
      mkdirSync(dirname(join(path, name)), { recursive: true });
      writeFileSync(join(path, name), text);
    },
    read: (name) => readFileSync(join(path, name), 'utf8'),
    list: (name = '.') => readdirSync(join(path, name)).sort(),
    run: (args, input = '') => runIn(path, args, input),
  };
  for (const [name, text] of Object.entries(files)) handle.write(name, text);
  return handle;
}

function runIn(path: string, args: readonly string[], input: string): Ran {
  let stdout = '';
  let stderr = '';
  const plain = createColors(false);
  const status = papervolt(args, {
    folder: path,
    today: '2026-03-12',
    readStandardInput: () => Buffer.from(input),
    result: (line) => {
      stdout += `${line}\n`;
    },
    resultText: (text) => {
      stdout += text;
    },
    say: (line) => {
      stderr += `${line}\n`;
    },
    resultColors: plain,
    sayColors: plain,
  });
  return { status, stdout, stderr };
}

export interface ProcessOptions {
  readonly input?: string;
  readonly env?: Readonly<Record<string, string>>;
}

/** `node SCRIPT ARGS` in a folder; a script of the project counts from its root. */
export function runProcess(
  cwd: string,
  [script, ...args]: readonly [string, ...string[]],
  options: ProcessOptions = {},
): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [resolve(root, script), ...args], {
    cwd,
    input: options.input ?? '',
    encoding: 'utf8',
    env: { ...process.env, ...options.env },
  });
  return { status, stdout, stderr };
}

/** The text of a file of the project. */
export const projectFile = (name: string): string => readFileSync(join(root, name), 'utf8');

export const bars = `---
next-review: 2027-03-12
risk-assessment: RA-7
---
# Bars

\`\`\`electrodes bars
paper   240 mm × 160 mm, 2 kΩ per square
supply  power-pack 1.5 V
meter   10 MΩ, resolution 0.01 V, probe tip 1 mm

bar     A  10 mm × 160 mm at (25, 80) mm                positive
bar     B  10 mm × 160 mm at (215, 80) mm               negative

row     L  from A to B every 45 mm
probe   M  at (75, 33) mm
\`\`\`

The middle reads ?{M}.

::: safety
- Keep the clips apart. Join the supply last. If a lead feels warm, switch off.
- Only inspected school power packs with a fuse are used. Set yours to zero first, use its d.c. terminals, keep it dry.
- Keep the probe away from eyes, and its cap on. Wash your hands afterwards.
:::
`;
