import type { onRequestHookHandler } from 'fastify'
import { authorize } from '../../useCases/authorize.ts'
import { senderOf } from './senderOf.ts'

/**
 * Who may ask for estimates: everybody, or, where the operator gives none to callers without a key, keys with the
 * scope. Checked before the body is read.
 * @throws DomainError key-required, scope-missing
 */
export const mayEstimate =
  (anonymousEstimates: boolean): onRequestHookHandler =>
  async (request) => {
    if (!anonymousEstimates) authorize(senderOf(request), 'estimate')
  }
