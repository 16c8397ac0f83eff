import type { onRequestHookHandler } from 'fastify'
import { DomainError } from '../../core/fault.ts'

/**
 * Who may ask for estimates. The place where keys will be checked: before the body is read. There are no keys
 * yet, so where the operator lets nobody in without one, nobody gets in.
 * @throws DomainError key-required
 */
export const mayEstimate =
  (anonymousEstimates: boolean): onRequestHookHandler =>
  async () => {
    if (!anonymousEstimates)
      throw new DomainError(
        'key-required',
        'Estimates are given to callers with a key only, and no keys have been issued.',
      )
  }
