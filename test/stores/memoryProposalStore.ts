import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import type { Inventory } from '../../src/core/inventory/inventory.ts'
import type { Rejection } from '../../src/core/proposals/rejection.ts'
import type { RealPowerReading, StoredReading } from '../../src/core/proposals/storedReading.ts'
import type { ProposalStore } from '../../src/stores/proposalStore.ts'

interface Held {
  readonly organisation: string
  readonly inventory: Inventory
}

/** Readings of inventories in memory, and rejections, for tests of what stands on a store. */
export function memoryProposalStore(
  write: (event: NewAuditEvent) => void,
  inventories: () => readonly Held[],
): ProposalStore {
  const rejections: Rejection[] = []
  const all = () => inventories().flatMap(readingsIn)
  return {
    categoryNames: async () => [...new Set(all().map(({ category }) => category))].sort(),
    readings: async function* (categoryName) {
      yield all().filter(({ category }) => category === categoryName)
    },
    rejections: async (category) => rejections.filter((one) => one.category === category),
    reject: async (rejection, event) => {
      rejections.push(structuredClone(rejection))
      write(event)
    },
  }
}

const isRealPower = (reading: { readonly kind: string } | undefined): reading is RealPowerReading =>
  reading !== undefined && ['power', 'energy', 'samples'].includes(reading.kind)

const readingsIn = ({ organisation, inventory }: Held): StoredReading[] =>
  inventory.content.visits.flatMap(({ date, devices }) =>
    devices.flatMap((device, place) =>
      (device.modes ?? []).flatMap(({ mode, reading }) =>
        isRealPower(reading)
          ? [
              {
                organisation,
                inventory: inventory.id,
                visit: date,
                place,
                device: device.id ?? null,
                category: device.category,
                mode,
                year: device.year ?? null,
                quantity: device.quantity ?? null,
                reading,
              },
            ]
          : [],
      ),
    ),
  )
