import type { OverlayAction, OverlayRevision } from '../core/catalogue/overlayRevision.ts'

interface StoredOverlayRevision {
  readonly organisation: string
  readonly number: number
  readonly action: string
  readonly keyId: string
  readonly reason: string
  readonly at: Date
  readonly code: string
}

/** A revision of an overlay from its row. Only this service writes the action, so it is one of the list. */
export const readOverlayRevision = (row: StoredOverlayRevision): OverlayRevision => ({
  number: row.number,
  action: row.action as OverlayAction,
  code: row.code,
  author: { organisation: row.organisation, keyId: row.keyId },
  reason: row.reason,
  at: row.at,
})
