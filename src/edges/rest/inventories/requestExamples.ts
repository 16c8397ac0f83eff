import type { z } from 'zod'
import type { inventoryContentSchema, inventoryPatchSchema, visitSchema } from '../../../schemas/inventory.ts'
import type { planWantedSchema, verificationWantedSchema } from '../../../schemas/inventoryWants.ts'
import type { estimateWantedSchema } from '../../../schemas/storedEstimate.ts'

/** Two visits of one invented household: on the second the television was read. */
export const firstVisit = {
  date: '2026-01-15',
  notes: 'Set-top box could not be reached.',
  devices: [{ id: 'tv', label: 'Television in the living room', category: 'television', year: 2018 }],
} satisfies z.input<typeof visitSchema>

export const followUp = {
  date: '2026-04-20',
  meters: [{ id: 'wattmeter', percentOfReading: 1.5, counts: 3, resolution: 0.01 }],
  devices: [
    {
      id: 'tv',
      label: 'Television in the living room',
      category: 'television',
      year: 2018,
      modes: [
        { mode: 'standby', hoursPerWeek: 140, reading: { kind: 'power', watts: 0.8, meterId: 'wattmeter' } },
      ],
    },
  ],
} satisfies z.input<typeof visitSchema>

export const exampleContent = {
  reference: 'H-2041',
  annualUseKwh: 3200,
  visits: [firstVisit],
} satisfies z.input<typeof inventoryContentSchema>

/** The examples of the API description for request bodies; all of it is invented. */
export const INVENTORY_REQUESTS = {
  createInventory: {
    firstVisit: { summary: 'A household with its first visit', value: exampleContent },
  },
  patchInventory: {
    use: {
      summary: 'Another annual use, and no notes any more',
      value: { annualUseKwh: 2950, notes: null } satisfies z.input<typeof inventoryPatchSchema>,
    },
  },
  addVisit: { followUp: { summary: 'A follow-up visit', value: followUp } },
  planForInventory: {
    budget: {
      summary: 'With 20 to spend, of the last visit',
      value: { plan: { budget: 20 } } satisfies z.input<typeof planWantedSchema>,
    },
  },
  verifyInventory: {
    firstAndLast: {
      summary: 'Between the first visit and the last',
      value: {} satisfies z.input<typeof verificationWantedSchema>,
    },
  },
  storeEstimate: {
    lastVisit: {
      summary: 'Of the last visit',
      value: {} satisfies z.input<typeof estimateWantedSchema>,
    },
    firstVisit: {
      summary: 'Of the first visit, with wider intervals',
      value: { visit: '2026-01-15', coverageProbability: 0.95 } satisfies z.input<
        typeof estimateWantedSchema
      >,
    },
  },
}
