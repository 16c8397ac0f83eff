import { watchCatalogue } from '../../src/persistence/watchCatalogue.ts'

/** A process that has nothing to do but to watch: it must end by itself. */
watchCatalogue(
  { refresh: async () => undefined },
  {
    everyMs: 3_600_000,
    onError: (error) => {
      throw error
    },
  },
)
process.stdout.write('watching\n')
