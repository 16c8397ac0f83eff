import type { Household } from './household.ts'
import type { Inventory } from './inventory.ts'

/** One household of a batch, as an intake form has it: at most one visit. */
export interface IntakeHousehold extends Omit<Household, 'catalogueRevision' | 'method' | 'draws' | 'seed'> {
  /** Required where households are kept. */
  readonly reference?: string
  /** YYYY-MM-DD; the day on which it comes in where none is given. */
  readonly date?: string
  readonly notes?: string
}

/** An intake household as an inventory with one visit. */
export function inventoryOf(
  { reference, date, notes, meters, devices, ...terms }: IntakeHousehold,
  id: string,
  now: string,
): Inventory {
  return {
    id,
    version: 1,
    createdAt: now,
    updatedAt: now,
    content: {
      reference: reference ?? id,
      ...(notes !== undefined && { notes }),
      ...terms,
      visits: [{ date: date ?? now.slice(0, 10), ...(meters && { meters }), devices }],
    },
  }
}
