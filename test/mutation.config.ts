import { defineConfig } from 'vitest/config'
import usual from './vitest.config.ts'

/** Mutants of src/core are held against the tests of the core alone, one file after the other. */
export default defineConfig({
  ...usual,
  test: {
    ...usual.test,
    include: ['test/core/**/*.test.ts', 'test/published/**/*.test.ts'],
    maxWorkers: 1,
    // The services of other tests, and tests that measure, are not what a mutant should wait for.
    exclude: ['**/accuracy.test.ts', '**/node_modules/**'],
  },
})
