import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['packages/*/src/**/*.test.ts', 'packages/*/test/**/*.test.ts', 'scripts/**/*.test.ts'],
    exclude: ['**/*.slow.test.ts', '**/*.browser.test.ts', '**/node_modules/**'],
    environment: 'node',
  },
});
