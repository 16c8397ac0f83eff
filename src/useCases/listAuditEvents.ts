import type { AuditEvent } from '../core/access/auditEvent.ts'
import type { AuditFilter } from '../stores/auditStore.ts'
import type { Window } from '../stores/window.ts'
import { authorize, reachOf, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type Part, partOf } from './part.ts'

/**
 * Events of the audit trail, newest first: those that concern the caller's organisation, or, to the operator's admins, all.
 * @throws DomainError key-required, scope-missing
 */
export async function listAuditEvents(
  { auditStore }: Deps,
  sender: Sender,
  asked: AuditFilter,
  window: Window<string>,
): Promise<Part<AuditEvent>> {
  const reach = reachOf(authorize(sender, 'admin').caller, asked.organisation)
  return partOf(window, async (wider) => (reach ? auditStore.list({ ...asked, ...reach }, wider) : []))
}

/** How many events there are in such a list. @throws DomainError key-required, scope-missing */
export async function countAuditEvents(
  { auditStore }: Deps,
  sender: Sender,
  asked: AuditFilter,
): Promise<number> {
  const reach = reachOf(authorize(sender, 'admin').caller, asked.organisation)
  return reach ? auditStore.count({ ...asked, ...reach }) : 0
}
