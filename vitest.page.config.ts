import { defineConfig } from 'vitest/config';

/** Tests in a real browser (Debian's chromium through playwright-core): `npm run test:page`. */
export default defineConfig({
  test: {
    globalSetup: ['tests/page/built.setup.ts'],
    include: ['tests/page/**/*.test.ts'],
    // A busy machine may take its time; what is wrong fails all the same.
    expect: { poll: { timeout: 20_000 } },
    testTimeout: 120_000,
    hookTimeout: 180_000,
    fileParallelism: false,
  },
});
