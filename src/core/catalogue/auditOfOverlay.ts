import type { NewAuditEvent } from '../access/auditEvent.ts'
import type { Category } from './category.ts'
import type { OverlayEdit } from './overlayRevision.ts'

/** What the audit trail says of an edit of an overlay: the category before and after; null where it did not lie there. */
export function auditOfOverlay(
  { action, code, category, origin, reason, at }: OverlayEdit,
  overlayRevision: number,
  before: Category | null,
): NewAuditEvent {
  return {
    at,
    origin,
    action: `overlay.${action}`,
    subjectKind: 'overlay-category',
    subjectId: code,
    concerns: origin.caller.organisation,
    before: before && { overlayRevision: overlayRevision - 1, category: before },
    after: { overlayRevision, reason, category },
  }
}
