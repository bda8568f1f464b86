import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Real editors have a run of their own: npm run test:editor.
    exclude: ['tests/editor/**'],
    setupFiles: ['tests/seed.ts'],
    testTimeout: 30_000,
    // Files share a thread and what it has loaded: half the time of the suite would go into loading the same core again.
    pool: 'threads',
    isolate: false,
    // One core less would be half of a small machine.
    maxWorkers: '100%',
  },
});
