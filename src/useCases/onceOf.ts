import { ONCE_KEY } from '../core/access/onceKey.ts'
import { DomainError } from '../core/fault.ts'
import type { Once } from '../stores/once.ts'
import type { Deps } from './deps.ts'

/**
 * What makes a request have its effect once: its key, and a digest of what it asks for.
 * @param key as the caller sent it; null where the request may have its effect each time
 * @param asked everything that the result depends on, as it was sent
 * @throws DomainError idempotency-key-malformed
 */
export function onceOf(
  { digests, clock }: Deps,
  key: string | null,
  ...asked: readonly unknown[]
): Once | null {
  if (key === null) return null
  if (!ONCE_KEY.test(key))
    throw new DomainError(
      'idempotency-key-malformed',
      'An Idempotency-Key is 1 to 200 visible ASCII characters, such as a UUID.',
    )
  return { key, digest: digests.of(JSON.stringify(asked)), at: clock() }
}
