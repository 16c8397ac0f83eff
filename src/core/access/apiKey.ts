import type { Scope } from './caller.ts'

/**
 * `secret` keys are for programs that can keep a secret. A `publishable` key stands in a website for all to read: it
 * is good for estimates alone, and only from the website's own origins.
 */
export const KEY_KINDS = ['secret', 'publishable'] as const
export type KeyKind = (typeof KEY_KINDS)[number]

/** What is known of a key besides its secret; fit to be shown to the admins of its organisation. */
export interface ApiKey {
  /** The part of the key that it is found by; logs and the audit trail name the key by it. */
  readonly id: string
  readonly organisation: string
  readonly kind: KeyKind
  /** What people call it, such as the program that uses it. */
  readonly name: string
  readonly scopes: readonly Scope[]
  /** Where a publishable key may be used from, such as https://www.example.org; empty for a secret one. */
  readonly origins: readonly string[]
  /** Whether it is the key of the operator's setting BOOTSTRAP_ADMIN_KEY. */
  readonly bootstrap: boolean
  readonly issuedAt: Date
  /** The key that it was issued with; null where the service issued it at a start. */
  readonly issuedBy: string | null
  /** The key that it is the successor of. */
  readonly rotatedFrom: string | null
  readonly expiresAt: Date | null
  readonly revokedAt: Date | null
  /** To the minute. */
  readonly lastUsedAt: Date | null
}

/** A key as it is stored: its secret as a digest alone. */
export interface StoredKey extends ApiKey {
  /** SHA-256 of the whole key, 32 bytes. */
  readonly digest: Uint8Array
}

export const KEY_STATES = ['active', 'expired', 'revoked'] as const
export type KeyState = (typeof KEY_STATES)[number]

/** What a key is good for at a time: nothing, once it has expired or been revoked. */
export function stateOf(key: Pick<ApiKey, 'revokedAt' | 'expiresAt'>, now: Date): KeyState {
  if (key.revokedAt !== null) return 'revoked'
  return key.expiresAt !== null && key.expiresAt <= now ? 'expired' : 'active'
}

/** The key without its digest, field by field, so that nothing else an object carries goes along. */
export const withoutDigest = (key: ApiKey): ApiKey => ({
  id: key.id,
  organisation: key.organisation,
  kind: key.kind,
  name: key.name,
  scopes: key.scopes,
  origins: key.origins,
  bootstrap: key.bootstrap,
  issuedAt: key.issuedAt,
  issuedBy: key.issuedBy,
  rotatedFrom: key.rotatedFrom,
  expiresAt: key.expiresAt,
  revokedAt: key.revokedAt,
  lastUsedAt: key.lastUsedAt,
})
