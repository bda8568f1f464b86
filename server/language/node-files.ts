/** The Markdown files of folders of this machine. */
import { readFile, stat } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { glob } from 'tinyglobby';
import { mostFiles, type WorkspaceFiles } from './workspace-files.ts';

/** Looking for files ends here; what was found by then is not told in part. */
const longestSearch_ms = 5_000;
/** A longer file is no sheet. */
const longestFile_bytes = 2_000_000;

/** `folders` are URIs; others than files are left out. */
export function filesOfMachine(folders: readonly string[]): WorkspaceFiles {
  const paths = folders.filter((uri) => uri.startsWith('file:')).map((uri) => fileURLToPath(uri));
  return {
    async list() {
      const found = await Promise.all(paths.map(markdownIn));
      return [...new Set(found.flat())].sort().slice(0, mostFiles);
    },
    async read(uri) {
      const path = fileURLToPath(uri);
      try {
        const { size } = await stat(path);
        return size > longestFile_bytes ? null : await readFile(path, 'utf8');
      } catch {
        // Gone since it was listed, or not ours to read.
        return null;
      }
    },
  };
}

async function markdownIn(folder: string): Promise<readonly string[]> {
  const options = {
    cwd: folder,
    absolute: true,
    ignore: ['**/node_modules/**', '**/.git/**'],
    followSymbolicLinks: false,
    signal: AbortSignal.timeout(longestSearch_ms),
  };
  try {
    const paths = await glob('**/*.{md,markdown}', options);
    return paths.map((path) => pathToFileURL(path).href);
  } catch {
    // A folder that is gone, or so large that nobody would wait.
    return [];
  }
}
