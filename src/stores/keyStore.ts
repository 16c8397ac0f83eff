import type { ApiKey, StoredKey } from '../core/access/apiKey.ts'
import type { Origin } from '../core/access/caller.ts'
import type { Organisation } from '../core/access/organisation.ts'
import type { Window } from './window.ts'

/** Where a key stands in the list of keys, newest first. */
export interface KeyPlace {
  readonly issuedAt: Date
  readonly id: string
}

export interface KeyFilter {
  /** Only this organisation's. */
  readonly organisation?: string | undefined
}

/** Organisations and their keys. Each change stores its audit event with it, or neither is stored. */
export interface KeyStore {
  /** @throws DomainError organisation-exists */
  addOrganisation(organisation: Organisation, origin: Origin | null): Promise<void>
  /** In the order of their codes. */
  organisations(page: {
    readonly after?: string | undefined
    readonly limit: number
  }): Promise<readonly Organisation[]>

  /** @throws DomainError unknown-organisation */
  issue(key: StoredKey, origin: Origin | null): Promise<void>
  find(id: string): Promise<StoredKey | null>
  /** Every origin that a publishable key, valid at that time, is for. */
  origins(at: Date): Promise<ReadonlySet<string>>
  /** Newest first. */
  list(filter: KeyFilter, window: Window<KeyPlace>): Promise<readonly ApiKey[]>
  count(filter: KeyFilter): Promise<number>
  /**
   * Ends a key for good; one that is revoked already stays as it is.
   * @throws DomainError unknown-key
   */
  revoke(id: string, at: Date, origin: Origin | null): Promise<ApiKey>
  /**
   * Issues the successor of the key that it names; that key expires at `endsAt`, where it would not end sooner.
   * @throws DomainError key-ended, key-rotated
   */
  rotate(successor: StoredKey, endsAt: Date, origin: Origin): Promise<void>
  /** Keeps that a key was used, once a minute at most. */
  noteUse(id: string, at: Date): Promise<void>

  /** The valid key of the operator's setting. */
  bootstrapKey(): Promise<StoredKey | null>
  /**
   * Makes this the key of the operator's setting, where its digest is not that of the one in force, and revokes the one
   * before; null leaves none. Of several processes that start at once, each does its part after the other.
   */
  setBootstrapKey(key: StoredKey | null, at: Date): Promise<void>
  /** Issues the key where none was ever issued besides that of the setting. @returns whether it did */
  issueFirst(key: StoredKey): Promise<boolean>
}
