import type { EstimateWithStanding } from '../useCases/listStoredEstimates.ts'
import type { InventorySummary, TimedPlace } from '../useCases/listInventories.ts'
import type { StoredList } from './listCursor.ts'

/** A time in ms since 1970, and an id. */
const TIMED = {
  form: /^\d{1,15}\.[a-z2-7]{16}$/,
  read: (text: string): TimedPlace => {
    const [time, id = ''] = text.split('.')
    return { at: new Date(Number(time)), id }
  },
}
const timed = (at: string, id: string) => `${Date.parse(at)}.${id}`

/** The same for both edges, so that a cursor that either gave out is good for the other. */
export const INVENTORY_LIST: StoredList<InventorySummary, TimedPlace> = {
  name: 'inventories',
  ...TIMED,
  write: ({ createdAt, id }) => timed(createdAt, id),
}

export const STORED_ESTIMATE_LIST: StoredList<EstimateWithStanding, TimedPlace> = {
  name: 'stored-estimates',
  ...TIMED,
  write: ({ stored: { madeAt, id } }) => timed(madeAt, id),
}
