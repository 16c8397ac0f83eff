import type { Deps } from '../../useCases/deps.ts'

/** What the REST routes are given. */
export interface RestContext {
  readonly deps: Deps
  /** Whether estimates are given to callers without a key. */
  readonly anonymousEstimates: boolean
  /** Largest file of interval data that is read; 32 MiB where it is not given. */
  readonly baseLoadLimitBytes?: number
  /** Largest file that is imported; 16 MiB where it is not given. */
  readonly importLimitBytes?: number
  /** Rejects where the database fails, or does not answer in time. */
  readonly checkStore: () => Promise<void>
}
