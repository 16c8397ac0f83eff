import type { NewAuditEvent } from '../core/access/auditEvent.ts'
import type { Rejection } from '../core/proposals/rejection.ts'
import type { StoredReading } from '../core/proposals/storedReading.ts'

/**
 * What the inventories of all organisations hold of real power, by category, and the proposals that editors turned down. It is for
 * the operator's editors alone, through what core/proposals makes of it; no reading is ever answered as it is.
 */
export interface ProposalStore {
  /** The names by which devices with such a reading go: codes, names and aliases, as organisations wrote them. */
  categoryNames(): Promise<readonly string[]>
  /**
   * The readings of devices that go by a name, of every visit that is stored now, in pages. An inventory that is stored anew
   * meanwhile may come once more, as it is then.
   */
  readings(categoryName: string): AsyncIterable<readonly StoredReading[]>
  /** What was turned down of a category, oldest first. */
  rejections(category: string): Promise<readonly Rejection[]>
  /** Keeps that a proposal was turned down, and its audit event, or neither. Nothing takes it away. */
  reject(rejection: Rejection, event: NewAuditEvent): Promise<void>
}
