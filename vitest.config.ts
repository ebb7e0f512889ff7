import { defineConfig } from 'vitest/config'

export default defineConfig({
  ssr: { resolve: { conditions: ['loopwright-source'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    // One process runs many files: starting each anew took two thirds of the time, and nothing here keeps state between files.
    isolate: false,
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
})
