import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { deleteApiKey } from './deleteApiKey.ts'
import { getApiKey } from './getApiKey.ts'
import { getApiKeys } from './getApiKeys.ts'
import { getAuditEvent } from './getAuditEvent.ts'
import { getAuditEvents } from './getAuditEvents.ts'
import { getOrganisations } from './getOrganisations.ts'
import { postApiKey } from './postApiKey.ts'
import { postKeyRotation } from './postKeyRotation.ts'
import { postOrganisation } from './postOrganisation.ts'

/** The routes of organisations, keys and the audit trail. */
export const ACCESS_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  postOrganisation,
  getOrganisations,
  postApiKey,
  getApiKeys,
  getApiKey,
  deleteApiKey,
  postKeyRotation,
  getAuditEvents,
  getAuditEvent,
]
