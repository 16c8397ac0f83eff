import type { onRequestHookHandler } from 'fastify'
import { DomainError } from '../../core/fault.ts'
import { authorize } from '../../useCases/authorize.ts'
import { senderOf } from './senderOf.ts'

/**
 * Who may ask anything at an address where documents may hold an estimate: where the operator gives none to callers without
 * a key, whoever has one. What it is good for is then up to each field.
 * @throws DomainError key-required
 */
export const mayAsk =
  (anonymousEstimates: boolean): onRequestHookHandler =>
  async ({ caller }) => {
    if (!anonymousEstimates && caller === null)
      throw new DomainError('key-required', 'This needs a key, in Authorization: Bearer …')
  }

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
