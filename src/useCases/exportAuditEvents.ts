import type { AuditEvent } from '../core/access/auditEvent.ts'
import type { AuditFilter } from '../stores/auditStore.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { listAuditEvents } from './listAuditEvents.ts'

const AT_ONCE = 500

/**
 * All events that a filter lets through, newest first, in pieces, of which there is at least one; events that come in
 * meanwhile are left out. Nothing is read before the first piece is asked for.
 * @param after the id of the event after which to begin
 * @throws DomainError key-required, scope-missing
 */
export async function* exportAuditEvents(
  deps: Deps,
  sender: Sender,
  asked: AuditFilter,
  after: string | undefined,
): AsyncGenerator<readonly AuditEvent[], void> {
  for (;;) {
    const { items, hasAfter } = await listAuditEvents(deps, sender, asked, {
      after,
      limit: AT_ONCE,
      keep: 'first',
    })
    yield items
    if (!hasAfter) return
    after = items.at(-1)?.id
  }
}
