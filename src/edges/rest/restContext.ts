import type { Deps } from '../../useCases/deps.ts'

/** What the REST routes are given. */
export interface RestContext {
  readonly deps: Deps
  /** Whether estimates are given to callers without a key. */
  readonly anonymousEstimates: boolean
  /** Rejects where the database fails, or does not answer in time. */
  readonly checkStore: () => Promise<void>
}
