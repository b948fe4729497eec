import { defineConfig } from 'vitest/config';

/** Two projects: `unit` needs nothing but Node; `browser` drives a real Chromium against the built pages. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          setupFiles: ['tests/property-seed.ts'],
          testTimeout: 240_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 240_000,
          hookTimeout: 120_000,
          // What a page shows follows what it was told by a moment, and by more of one on a busy machine.
          expect: { poll: { timeout: 15_000 } },
        },
      },
    ],
  },
});
