import { defineConfig } from 'vitest/config';

/** One project per folder of tests; `tests/run.mjs` runs them and counts. */
const NODE_PROJECTS = ['unit', 'published', 'oracle', 'property', 'faults', 'golden'];

export default defineConfig({
  test: {
    passWithNoTests: true,
    projects: [
      ...NODE_PROJECTS.map((name) => ({
        test: {
          name,
          include: [`tests/${name}/**/*.test.{ts,tsx}`],
          environment: 'node',
          testTimeout: 20_000,
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
