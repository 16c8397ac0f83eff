import type { FastifyBaseLogger } from 'fastify'
import type { Sender } from '../../useCases/authorize.ts'
import type { Deps } from '../../useCases/deps.ts'

/** What every resolver is given besides its arguments; one for each request. */
export interface GraphqlContext {
  readonly deps: Deps
  /** Who sent the request, by its key. */
  readonly sender: Sender
  /** Whether estimates are given to callers without a key. */
  readonly anonymousEstimates: boolean
  readonly requestId: string
  readonly log: FastifyBaseLogger
}
