import { DomainError } from '../../core/fault.ts'

/** What `node` tells nothing of: what is not there, and what the caller may not see, are both null. */
const NOTHING_TOLD: ReadonlySet<string> = new Set([
  'key-required',
  'scope-missing',
  'unknown-key',
  'unknown-audit-event',
  'unknown-revision',
  'unknown-inventory',
  'unknown-estimate',
  'unknown-reference-revision',
  'unknown-overlay-revision',
  'unknown-proposal',
  'operator-only',
])

/** What was read for an id, or null where the id names nothing that the caller may see. */
export async function nodeOrNull<T>(read: () => Promise<T>): Promise<T | null> {
  try {
    return await read()
  } catch (error) {
    if (error instanceof DomainError && NOTHING_TOLD.has(error.code)) return null
    throw error
  }
}
