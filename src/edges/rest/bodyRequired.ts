import type { preValidationAsyncHookHandler } from 'fastify'
import { DomainError } from '../../core/fault.ts'

/** Refuses a request without a body, for routes that need one. */
export const bodyRequired: preValidationAsyncHookHandler = async (request) => {
  if (request.body === undefined)
    throw new DomainError('malformed-body', 'This request needs a JSON body; none came.')
}
