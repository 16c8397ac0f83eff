import type { NewAuditEvent } from '../core/access/auditEvent.ts'
import type { StoredEstimate } from '../core/inventory/storedEstimate.ts'
import type { Inventory, InventorySummary } from '../core/inventory/inventory.ts'
import type { Once, OnceResult } from './once.ts'
import type { Window } from './window.ts'

/** Where something stands in a list that is newest first. */
export interface TimedPlace {
  readonly at: Date
  readonly id: string
}

export interface InventoryFilter {
  readonly reference?: string | undefined
  /** Of the last visit, YYYY-MM-DD, both ends in it. */
  readonly visitedFrom?: string | undefined
  readonly visitedTo?: string | undefined
  /** Whether there are two visits or more. */
  readonly followedUp?: boolean | undefined
}

export interface InventoryChange {
  readonly after: Inventory
  readonly event: NewAuditEvent
}

/** One line of a batch. */
export interface BatchEntry {
  readonly line: number
  /** SHA-256 of the line. */
  readonly digest: Uint8Array
  readonly inventory: Inventory
  readonly estimate: StoredEstimate
}

/** What became of it: with the estimate that is kept, or with the inventory that is in its way. */
export type BatchOutcome =
  | { readonly kind: 'stored' | 'already-stored'; readonly estimate: StoredEstimate }
  /** Another line with the number came with this batch before; or another household has its reference. */
  | { readonly kind: 'line-changed' | 'reference-taken'; readonly inventory: string }

/**
 * Households of organisations, and the estimates kept of them. Every call names the organisation, and what is another's is
 * not there for it. Each change stores its audit event with it, or neither is stored.
 */
export interface InventoryStore {
  /** @throws DomainError inventory-exists, and what Once says */
  add(
    organisation: string,
    inventory: Inventory,
    event: NewAuditEvent,
    once: Once | null,
  ): Promise<OnceResult<Inventory>>
  find(organisation: string, id: string): Promise<Inventory | null>
  /** Newest first. */
  list(
    organisation: string,
    filter: InventoryFilter,
    window: Window<TimedPlace>,
  ): Promise<readonly InventorySummary[]>
  count(organisation: string, filter: InventoryFilter): Promise<number>
  /**
   * Puts another version in the place of an inventory. `decide` is given the present one, which nobody changes meanwhile; what it
   * throws leaves everything as it was.
   * @throws DomainError unknown-inventory, inventory-exists; what Once says; what `decide` throws
   */
  change(
    organisation: string,
    id: string,
    decide: (before: Inventory) => InventoryChange,
    once: Once | null,
  ): Promise<OnceResult<Inventory>>
  /**
   * Takes an inventory away with everything that hangs on it.
   * @throws DomainError unknown-inventory; what `decide` throws
   */
  remove(organisation: string, id: string, decide: (before: Inventory) => NewAuditEvent): Promise<void>

  /** @throws DomainError unknown-inventory, and what Once says */
  addEstimate(
    organisation: string,
    estimate: StoredEstimate,
    event: NewAuditEvent,
    once: Once | null,
  ): Promise<OnceResult<StoredEstimate>>
  findEstimate(organisation: string, inventory: string, id: string): Promise<StoredEstimate | null>
  /** Newest first. */
  estimates(
    organisation: string,
    inventory: string,
    window: Window<TimedPlace>,
  ): Promise<readonly StoredEstimate[]>

  /**
   * Keeps many households, each with its estimate, in one transaction. A line that is stored already is not stored again; what
   * became of each is told in the order of `entries`.
   */
  addBatch(
    organisation: string,
    batch: string,
    entries: readonly BatchEntry[],
    event: NewAuditEvent,
  ): Promise<readonly BatchOutcome[]>
}
