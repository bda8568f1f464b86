/** Runs the program as a person would: a real process, in a folder of its own. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const program = resolve(dirname(fileURLToPath(import.meta.url)), '../../../dist/papervolt.mjs');

/** Folders of this process, removed when it ends. */
const made: string[] = [];
process.once('exit', () => {
  for (const path of made) rmSync(path, { recursive: true, force: true });
});

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
  run(
    args: readonly string[],
    options?: { readonly input?: string; readonly env?: Readonly<Record<string, string>> },
  ): Ran;
}

export function folder(files: Readonly<Record<string, string>> = {}): Folder {
  const path = mkdtempSync(join(tmpdir(), 'papervolt-'));
  made.push(path);
  const handle: Folder = {
    path,
    write(name, text) {
      mkdirSync(dirname(join(path, name)), { recursive: true });
      writeFileSync(join(path, name), text);
    },
    read: (name) => readFileSync(join(path, name), 'utf8'),
    list: (name = '.') => readdirSync(join(path, name)).sort(),
    run(args, { input = '', env = {} } = {}) {
      const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
        cwd: path,
        input,
        encoding: 'utf8',
        env: { ...process.env, ...env },
      });
      return { status, stdout, stderr };
    },
  };
  for (const [name, text] of Object.entries(files)) handle.write(name, text);
  return handle;
}

export const bars = `# Bars

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
`;
