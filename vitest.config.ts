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
    testTimeout: 60_000,
  },
});
