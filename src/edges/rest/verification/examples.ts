import type { z } from 'zod'
import type { verificationRequestSchema } from '../../../schemas/verification.ts'

const meters = [{ id: 'wattmeter', percentOfReading: 1.5, counts: 3, resolution: 0.01 }]

/** A switchable strip for a set-top box, a console that was read at the second visit only, and a plan for both. */
const twoVisits = {
  tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
  emissionFactor: { kgCo2ePerKwh: 0.25 },
  before: {
    meters,
    devices: [
      {
        id: 'box',
        category: 'set-top-box',
        modes: [
          {
            mode: 'networked-standby',
            hoursPerWeek: 140,
            reading: { kind: 'power', watts: 9.4, meterId: 'wattmeter' },
          },
        ],
      },
      {
        id: 'console',
        category: 'game-console',
        modes: [{ mode: 'standby', hoursPerWeek: 150 }],
      },
    ],
  },
  after: {
    meters,
    devices: [
      {
        id: 'box',
        category: 'set-top-box',
        modes: [
          {
            mode: 'networked-standby',
            hoursPerWeek: 40,
            reading: { kind: 'power', watts: 9.1, meterId: 'wattmeter' },
          },
        ],
      },
      {
        id: 'console',
        category: 'game-console',
        modes: [
          {
            mode: 'standby',
            hoursPerWeek: 150,
            reading: { kind: 'power', watts: 0.6, meterId: 'wattmeter' },
          },
        ],
      },
    ],
  },
  plan: [
    { name: 'Switchable strip for the set-top box', deviceIds: ['box'], expectedKwhPerYear: 45 },
    { name: 'Energy saving setting of the console', deviceIds: ['console'], expectedKwhPerYear: 8 },
  ],
} satisfies z.input<typeof verificationRequestSchema>

const smallest = {
  before: {
    devices: [{ id: 'tv', category: 'television', modes: [{ mode: 'standby', hoursPerWeek: 140 }] }],
  },
  after: { devices: [{ id: 'tv', category: 'television', modes: [{ mode: 'standby', hoursPerWeek: 30 }] }] },
} satisfies z.input<typeof verificationRequestSchema>

export const VERIFICATION_REQUESTS = {
  visits: { summary: 'Two visits with a wattmeter, and a plan', value: twoVisits },
  smallest: { summary: 'A device that nobody read, switched off for most hours', value: smallest },
}
