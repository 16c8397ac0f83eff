import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { deleteOverlayCategory } from './deleteOverlayCategory.ts'
import { getOverlay } from './getOverlay.ts'
import { getOverlayCategory } from './getOverlayCategory.ts'
import { getOverlayRevision } from './getOverlayRevision.ts'
import { getOverlayRevisions } from './getOverlayRevisions.ts'
import { patchOverlayCategory } from './patchOverlayCategory.ts'
import { putOverlayCategory } from './putOverlayCategory.ts'

/** The routes of an organisation's own figures over the shared catalogue. No address names an organisation: it is the key's. */
export const OVERLAY_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  getOverlay,
  getOverlayCategory,
  putOverlayCategory,
  patchOverlayCategory,
  deleteOverlayCategory,
  getOverlayRevisions,
  getOverlayRevision,
]
