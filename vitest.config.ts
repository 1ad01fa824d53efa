import { defineConfig } from 'vitest/config';
import { categories } from './scripts/testing/categories.mjs';

export default defineConfig({
  test: {
    reporters: ['default', './scripts/testing/totals.mjs'],
    allowOnly: false,
    environment: 'node',
    setupFiles: ['./scripts/testing/seed.mjs'],
    projects: [
      { extends: true, test: { name: 'gates', ...categories.gates, testTimeout: 120_000, hookTimeout: 120_000 } },
      { extends: true, test: { name: 'unit', ...categories.unit } },
      { extends: true, test: { name: 'slow', ...categories.slow, testTimeout: 300_000, hookTimeout: 300_000 } },
      {
        extends: true,
        test: {
          name: 'browser',
          ...categories.browser,
          // One browser at a time: two cores do not carry more, and a screen test that waits must not wait for another.
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
