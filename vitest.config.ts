import { defineConfig } from 'vitest/config';

/** One project per folder of tests; `tests/run.mjs` runs them and counts. */
const NODE_PROJECTS = ['unit', 'published', 'oracle', 'property', 'faults', 'golden'];

export default defineConfig({
  test: {
    passWithNoTests: true,
    // All cores: nothing else runs meanwhile.
    maxWorkers: '100%',
    // What was read once is kept for the next run.
    experimental: { fsModuleCache: true, fsModuleCachePath: '.cache/vitest-modules' },
    projects: [
      ...NODE_PROJECTS.map((name) => ({
        test: {
          name,
          include: [`tests/${name}/**/*.test.{ts,tsx}`],
          environment: 'node',
          testTimeout: 20_000,
          setupFiles: ['tests/support/seed.ts'],
          // Modules are read once for all files of a worker: reading them is most of the time, and none keeps state between tests.
          isolate: false,
        },
      })),
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // One browser at a time: the stories share the machine's two cores with nothing else.
          fileParallelism: false,
        },
      },
    ],
  },
});
