import { without } from '../without.ts'
import type { Device, Household } from './household.ts'
import type { Meter } from '../readings/reading.ts'

/** What was found in a household on one day: a full state, not a change of the one before. */
export interface Visit {
  /** YYYY-MM-DD; what a visit is named by within its inventory. */
  readonly date: string
  readonly notes?: string
  readonly meters?: readonly Meter[]
  readonly devices: readonly Device[]
}

/** What an organisation says of a household: what holds on every visit, and the visits. */
export interface InventoryContent extends Omit<
  Household,
  'devices' | 'meters' | 'catalogueRevision' | 'overlayRevision' | 'method' | 'draws' | 'seed'
> {
  /** The organisation's own name for the household, which tells nothing of who lives there. */
  readonly reference: string
  readonly notes?: string
  readonly visits: readonly Visit[]
}

/** One household as an organisation keeps it. */
export interface Inventory {
  readonly id: string
  /** 1 when it is made, one more with every change. */
  readonly version: number
  /** RFC 3339. */
  readonly createdAt: string
  readonly updatedAt: string
  readonly content: InventoryContent
}

export const VISIT_KINDS = ['first', 'follow-up'] as const
export type VisitKind = (typeof VISIT_KINDS)[number]

/** The visits in the order of their dates; the earliest is the first, all later ones are follow-ups. */
export const visitsByDate = ({
  visits,
}: InventoryContent): readonly (Visit & { readonly kind: VisitKind })[] =>
  visits
    .toSorted((one, other) => (one.date < other.date ? -1 : 1))
    .map((visit, i) => ({ ...visit, kind: i === 0 ? 'first' : 'follow-up' }))

/** What holds of the household on every visit. */
export const termsOf = (content: InventoryContent) => without(content, 'reference', 'notes', 'visits')

/** The household as it was on a visit, in the form that an estimate takes. */
export function householdAt(content: InventoryContent, visit: Visit): Household {
  return { ...termsOf(content), ...(visit.meters && { meters: visit.meters }), devices: visit.devices }
}

/** An inventory in a list. */
export interface InventorySummary extends Pick<Inventory, 'id' | 'version' | 'createdAt' | 'updatedAt'> {
  readonly reference: string
  /** Number of visits. */
  readonly visits: number
  /** Date of the last visit, YYYY-MM-DD; null where there is none yet. */
  readonly lastVisit: string | null
}

export const summaryOf = ({ id, version, createdAt, updatedAt, content }: Inventory): InventorySummary => ({
  id,
  version,
  createdAt,
  updatedAt,
  reference: content.reference,
  visits: content.visits.length,
  lastVisit: visitsByDate(content).at(-1)?.date ?? null,
})
