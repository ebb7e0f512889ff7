import { defineConfig } from 'vitest/config'

export default defineConfig({
  ssr: { resolve: { conditions: ['loopwright-source'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
})
