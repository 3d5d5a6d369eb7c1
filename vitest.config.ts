import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/page/**', '**/node_modules/**'],
    globalSetup: ['tests/weights.setup.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
