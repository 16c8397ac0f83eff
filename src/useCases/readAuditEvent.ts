import type { AuditEvent } from '../core/access/auditEvent.ts'
import { DomainError } from '../core/fault.ts'
import { authorize, isWithinReach, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'

/**
 * One event; that of another organisation is answered like one that does not exist.
 * @throws DomainError key-required, scope-missing, unknown-audit-event
 */
export async function readAuditEvent(deps: Deps, sender: Sender, id: string): Promise<AuditEvent> {
  const { caller } = authorize(sender, 'admin')
  const event = await deps.auditStore.find(id)
  if (event !== null && isWithinReach(caller, event.concerns)) return event
  throw new DomainError('unknown-audit-event', `There is no audit event with the id "${id.slice(0, 100)}".`)
}
