import { defineConfig } from 'vitest/config';

const conditions = ['@slabwright/source', 'module', 'node', 'development|production'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: [
      'packages/*/src/**/*.{test,prop}.ts',
      'reference/src/**/*.test.ts',
      'jobs/**/*.test.ts',
      'scripts/**/*.test.ts',
    ],
    exclude: ['**/dist/**', '**/node_modules/**'],
    // One idea a file and no state at module level: files share a worker, and what all of them import is read once.
    pool: 'threads',
    isolate: false,
    // By default one core is left free; nobody waits for it here.
    maxWorkers: 2,
    setupFiles: ['./scripts/property-seed.ts'],
    // Two cores, many files: one slow property waits for its turn.
    testTimeout: 120_000,
  },
});
