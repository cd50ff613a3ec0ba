import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

const conditions = ['source', 'node', 'import', 'module', 'default']

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts', 'bench/**/*.test.ts'],
    testTimeout: 600_000,
    maxWorkers: availableParallelism(),
    // What is loaded and made fast in one file serves the next: files keep nothing in the process that another could see.
    isolate: false,
  },
})
