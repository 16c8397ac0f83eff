import type { ApiKey } from '../core/access/apiKey.ts'
import type { AuditEvent } from '../core/access/auditEvent.ts'
import type { Organisation } from '../core/access/organisation.ts'
import type { KeyPlace } from '../useCases/listKeys.ts'
import type { StoredList } from './listCursor.ts'

/** The same for both edges, so that a cursor that either gave out is good for the other. */
export const KEY_LIST: StoredList<ApiKey, KeyPlace> = {
  name: 'api-keys',
  // When the key was issued, in ms since 1970, and its id.
  form: /^\d{1,15}\.[a-z2-7]{16}$/,
  write: ({ issuedAt, id }) => `${issuedAt.getTime()}.${id}`,
  read: (text) => {
    const [time, id = ''] = text.split('.')
    return { issuedAt: new Date(Number(time)), id }
  },
}

export const AUDIT_LIST: StoredList<AuditEvent, string> = {
  name: 'audit-events',
  form: /^[1-9]\d{0,17}$/,
  write: ({ id }) => id,
  read: (id) => id,
}

export const ORGANISATION_LIST: StoredList<Organisation, string> = {
  name: 'organisations',
  form: /^[a-z0-9-]{1,64}$/,
  write: ({ code }) => code,
  read: (code) => code,
}
