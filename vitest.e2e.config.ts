import { defineConfig } from 'vitest/config';
import { LongestFirst } from './packages/web/e2e/longest-first.ts';

const conditions = ['@slabwright/source', 'module', 'node', 'development|production'];

/** Tests in a real browser, on the built app. One build and one browser serve them all. */
export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  // The set-up runs in an environment of its own, which takes no part in the two above.
  environments: { __vitest__: { resolve: { conditions } } },
  test: {
    include: ['packages/web/e2e/**/*.e2e.ts'],
    globalSetup: ['packages/web/e2e/setup.ts'],
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    // Each takes seconds on a machine of its own; on a shared one the browser waits for its turn.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    expect: { poll: { timeout: 30_000 } },
  },
});
