import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

const conditions = ['source', 'node', 'import', 'module', 'default']

/** What counts the bytes of its process has one of its own: clearing up after all the others would take it minutes. */
const ALONE = ['packages/conversion/src/text/hostile.test.ts', 'packages/exchange/src/csv.test.ts']

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    testTimeout: 600_000,
    // A page that is slow because the machine has other work is not wrong.
    expect: { poll: { timeout: 20_000 } },
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'together',
          include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts', 'bench/**/*.test.ts'],
          exclude: [...ALONE, '**/node_modules/**', '**/dist/**'],
          // What is loaded and made fast in one file serves the next: files keep nothing in the process that another could see.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'alone', include: ALONE } },
    ],
  },
})
