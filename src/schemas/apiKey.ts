import { z } from 'zod'
import { type ApiKey, KEY_KINDS, KEY_STATES, stateOf } from '../core/access/apiKey.ts'
import { SCOPES } from '../core/access/caller.ts'
import type { KeyRequest } from '../core/access/keyRequest.ts'
import { OVERLAP_HOURS, type Rotation } from '../core/access/rotation.ts'
import { shortText } from './common.ts'
import { organisationCode } from './organisation.ts'
import { pageOf, pageQuery } from './paging.ts'

/** A time with its zone, as RFC 3339 writes it. */
export const instant = z.iso.datetime({ offset: true }).transform((text) => new Date(text))

const listOf = <T extends z.ZodType>(item: T, max: number) =>
  z
    .array(item)
    .min(1)
    .max(max)
    .refine((items) => new Set(items).size === items.length, 'must not name anything twice')

/** Scheme, host in small letters, port where it is not the usual one. A host in other letters comes in Punycode from browsers. */
const ORIGIN = /^https?:\/\/([a-z0-9-]+(\.[a-z0-9-]+)*|\[[0-9a-f:]+\])(:\d+)?$/
const isOrigin = (text: string) => ORIGIN.test(text) && URL.canParse(text) && new URL(text).origin === text
export const originSchema = z
  .string()
  .max(200)
  .refine(
    isOrigin,
    'must be an origin as browsers send it, such as https://www.example.org: no path and no slash at the end',
  )

export const keyRequestSchema = z
  .strictObject({
    name: shortText.describe('What people call the key, such as the program that uses it'),
    organisation: organisationCode
      .optional()
      .describe('The organisation that the key is for; your own where it is left out'),
    kind: z
      .enum(KEY_KINDS)
      .default('secret')
      .describe('publishable: to stand in a website, for estimates and the quiz alone'),
    scopes: listOf(z.enum(SCOPES), SCOPES.length)
      .optional()
      .describe('What the key may do. A secret key needs at least one; a publishable one has estimate'),
    origins: listOf(originSchema, 20)
      .optional()
      .describe('Origins of the website that a publishable key is for, such as https://www.example.org'),
    expiresAt: instant.optional().describe('When the key ends; never where it is left out'),
  })
  .meta({ id: 'KeyRequest' }) satisfies z.ZodType<KeyRequest>

export const rotationSchema = z
  .strictObject({
    overlapHours: z
      .number()
      .min(0)
      .max(OVERLAP_HOURS.max)
      .default(OVERLAP_HOURS.default)
      .describe('How long the key stays valid beside its successor, h'),
    expiresAt: instant
      .optional()
      .describe(
        'When the successor ends; where it is left out, it gets as long a term as the key was issued with',
      ),
  })
  .meta({ id: 'KeyRotation' }) satisfies z.ZodType<Rotation>

export const apiKeySchema = z
  .strictObject({
    id: z.string(),
    organisation: z.string(),
    kind: z.enum(KEY_KINDS),
    name: z.string(),
    scopes: z.array(z.enum(SCOPES)),
    origins: z.array(z.string()),
    state: z.enum(KEY_STATES),
    bootstrap: z.boolean().describe("Whether it is the key of the operator's setting BOOTSTRAP_ADMIN_KEY"),
    issuedAt: z.iso.datetime(),
    issuedBy: z
      .string()
      .nullable()
      .describe('Id of the key that it was issued with; null: by the service at a start'),
    rotatedFrom: z.string().nullable().describe('Id of the key that it is the successor of'),
    expiresAt: z.iso.datetime().nullable(),
    revokedAt: z.iso.datetime().nullable(),
    lastUsedAt: z.iso.datetime().nullable().describe('To the minute'),
  })
  .meta({ id: 'ApiKey', description: 'An API key without its secret' })
type ShownKey = z.output<typeof apiKeySchema>

export const issuedKeySchema = apiKeySchema
  .extend({ key: z.string().describe('The key itself. It is shown this once, and stored nowhere') })
  .meta({ id: 'IssuedKey', description: 'A new API key' })

export const keyListSchema = pageOf(apiKeySchema).meta({ id: 'ApiKeyList' })
export const keyQuerySchema = z.strictObject({ organisation: organisationCode.optional(), ...pageQuery })

const timeOf = (time: Date | null) => time?.toISOString() ?? null

/** A key as answers show it at a time. */
export const showKey = (key: ApiKey, now: Date): ShownKey => ({
  id: key.id,
  organisation: key.organisation,
  kind: key.kind,
  name: key.name,
  scopes: [...key.scopes],
  origins: [...key.origins],
  state: stateOf(key, now),
  bootstrap: key.bootstrap,
  issuedAt: key.issuedAt.toISOString(),
  issuedBy: key.issuedBy,
  rotatedFrom: key.rotatedFrom,
  expiresAt: timeOf(key.expiresAt),
  revokedAt: timeOf(key.revokedAt),
  lastUsedAt: timeOf(key.lastUsedAt),
})
