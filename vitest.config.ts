import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/page/**', '**/node_modules/**'],
    globalSetup: ['tests/weights.setup.ts'],
    // A busy machine may take its time; what is wrong fails all the same.
    expect: { poll: { timeout: 20_000 } },
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
