import type { z } from 'zod'
import type {
  apiKeySchema,
  issuedKeySchema,
  keyListSchema,
  keyRequestSchema,
  rotationSchema,
} from '../../../schemas/apiKey.ts'
import type { auditEventListSchema } from '../../../schemas/auditEvent.ts'
import type { newOrganisationSchema, organisationListSchema } from '../../../schemas/organisation.ts'

/** The examples of the API description for keys and the audit trail; all of it is invented. */
export const ACCESS_REQUEST_EXAMPLES = {
  makeOrganisation: {
    utility: {
      summary: 'A utility that is to get keys of its own',
      value: { code: 'example-utility', name: 'Example Utility' } satisfies z.input<
        typeof newOrganisationSchema
      >,
    },
  },
  issueApiKey: {
    program: {
      summary: 'For a program of your own organisation',
      value: {
        name: 'Intake form',
        scopes: ['estimate', 'intake'],
        expiresAt: '2100-01-01T00:00:00Z',
      } satisfies z.input<typeof keyRequestSchema>,
    },
    website: {
      summary: 'To stand in a website',
      value: {
        name: 'Self-check on our website',
        kind: 'publishable',
        origins: ['https://www.example.org'],
      } satisfies z.input<typeof keyRequestSchema>,
    },
  },
  rotateApiKey: {
    week: {
      summary: 'The key stays valid for a week more',
      value: { overlapHours: 168 } satisfies z.input<typeof rotationSchema>,
    },
  },
} as const

export const exampleOrganisation = {
  code: 'example-utility',
  name: 'Example Utility',
  madeAt: '2026-01-31T12:00:00.000Z',
}
export const exampleOrganisationList = { items: [exampleOrganisation], nextCursor: null } satisfies z.output<
  typeof organisationListSchema
>

export const exampleKey = {
  id: 'mfrggzdfmztwq2lk',
  organisation: 'example-utility',
  kind: 'secret',
  name: 'Intake form',
  scopes: ['estimate', 'intake'],
  origins: [],
  state: 'active',
  bootstrap: false,
  issuedAt: '2026-01-31T12:00:00.000Z',
  issuedBy: 'onswg4tfoqqgc3te',
  rotatedFrom: null,
  expiresAt: '2100-01-01T00:00:00.000Z',
  revokedAt: null,
  lastUsedAt: null,
} satisfies z.output<typeof apiKeySchema>
/** The text is no key: its checksum does not fit. */
export const exampleIssuedKey = {
  ...exampleKey,
  key: `sdk_mfrggzdfmztwq2lk_${'a'.repeat(59)}`,
} satisfies z.output<typeof issuedKeySchema>
export const exampleKeyList = { items: [exampleKey], nextCursor: null } satisfies z.output<
  typeof keyListSchema
>

/** The trail tells what was written, and a state is not: it is told from the times. */
const exampleKeyAsWritten = Object.fromEntries(
  Object.entries(exampleKey).filter(([name]) => name !== 'state'),
)
export const exampleEvent = {
  id: '42',
  at: '2026-01-31T12:00:00.000Z',
  organisation: 'example-utility',
  keyId: 'onswg4tfoqqgc3te',
  requestId: 'b7c1d2e0-1f',
  action: 'api-key.issue',
  subjectKind: 'api-key',
  subjectId: 'mfrggzdfmztwq2lk',
  concerns: 'example-utility',
  before: null,
  after: exampleKeyAsWritten,
}
export const exampleEventList = { items: [exampleEvent], nextCursor: null } satisfies z.output<
  typeof auditEventListSchema
>
