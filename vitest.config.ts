import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    pool: 'forks',
    // One for each of two cores; left alone the runner takes one.
    maxWorkers: 2,
    // What a browser shows follows within a second on a quiet machine; a busy one may take longer.
    expect: { poll: { timeout: 15_000 } },
  },
});
