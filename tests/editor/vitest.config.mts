/** Tests in real editors: one file after the other, since each starts a workbench and a browser. No second try. */
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: resolve(dirname(fileURLToPath(import.meta.url)), '../..'),
  test: {
    include: ['tests/editor/**/*.test.ts'],
    globalSetup: ['tests/editor/global-setup.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    fileParallelism: false,
    retry: 0,
    expect: { poll: { timeout: 30_000 } },
  },
});
