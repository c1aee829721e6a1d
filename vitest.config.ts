import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    pool: 'forks',
    // One for each of two cores; left alone the runner takes one.
    maxWorkers: 2,
    // What a browser shows follows within a second on a quiet machine; a busy one may take longer.
    expect: { poll: { timeout: 30_000 } },
    projects: [
      {
        extends: true,
        // A browser on a busy machine now and then loses an event; a second try is told in the report. A test that has run out
        // of time still goes on, and would reach into its second try: each wait gives up long before.
        test: { name: 'browser', include: ['tests/browser/**/*.test.ts'], retry: 1, testTimeout: 300_000 },
      },
      {
        extends: true,
        test: { name: 'faces', include: ['tests/faces/**/*.test.ts', 'tests/house/**/*.test.ts'] },
      },
      {
        extends: true,
        // One process takes file after file without loading the modules anew, which was a second a file: the layers inside
        // the faces hold no global state, and no test of theirs puts a module in another's place (a test of the house looks).
        test: {
          name: 'inner',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/{browser,faces,house}/**'],
          isolate: false,
        },
      },
    ],
  },
});
