import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  // One copy of graphql for all: Vite would load its ES modules beside the CommonJS that Apollo and Pothos load.
  resolve: { alias: [{ find: /^graphql$/, replacement: 'graphql/index.js' }] },
  test: {
    include: ['test/**/*.test.ts'],
    testTimeout: 30_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    coverage: {
      provider: 'v8',
      include: ['src/core/**/*.ts'],
      reporter: ['text-summary', 'json-summary'],
      thresholds: { 'src/core/**/*.ts': { branches: 100 } },
    },
  },
})
