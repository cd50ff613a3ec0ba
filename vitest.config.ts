import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

const conditions = ['source', 'node', 'import', 'module', 'default']

/** Packages whose tests touch nothing outside themselves: they may share what is loaded, which halves the time to load it. */
const PURE = ['engine', 'exchange', 'conversion', 'catalogue', 'drawing', 'geometry', 'workbench'].map(p => `packages/${p}/src/**/*.test.ts`)
const REST = ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts', 'bench/**/*.test.ts']

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    testTimeout: 600_000,
    maxWorkers: availableParallelism(),
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      { extends: true, test: { name: 'whole', include: REST, exclude: [...PURE, '**/node_modules/**', '**/dist/**'] } },
    ],
  },
})
