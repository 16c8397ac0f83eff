import type { FastifyBaseLogger } from 'fastify'
import type { Deps } from '../../useCases/deps.ts'

/** What every resolver is given besides its arguments; one for each request. */
export interface GraphqlContext {
  readonly deps: Deps
  readonly requestId: string
  readonly log: FastifyBaseLogger
}
