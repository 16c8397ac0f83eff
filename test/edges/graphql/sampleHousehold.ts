import type { Household } from '../../../src/core/inventory/household.ts'

/** One device for each kind of reading, and one for none; every field of the input is used. */
export const input = {
  supply: { volts: 240, tolerancePercent: 5, hertz: 50 },
  tariff: {
    twoPart: {
      currency: 'EUR',
      relativeUncertainty: 0.1,
      rounding: 'HALF_UP',
      components: [
        {
          block: {
            name: 'energy',
            per: 'MONTH',
            blocks: [{ upToKwh: 200, pricePerKwh: 0.2 }, { pricePerKwh: 0.25 }],
          },
        },
        {
          timeOfUse: {
            name: 'network',
            timeZone: 'Europe/Berlin',
            bands: [{ name: 'night', pricePerKwh: 0.02, hours: [{ from: '00:00', to: '06:00' }] }],
            otherwisePricePerKwh: 0.05,
          },
        },
      ],
    },
  },
  emissionFactor: { kgCo2ePerKwh: 0.3, gridLoss: 0.05, relativeUncertainty: 0.2 },
  annualUseKwh: 3000,
  weeksPerYear: 52,
  coverageProbability: 0.8,
  catalogueRevision: 1,
  meters: [{ id: 'm1', percentOfReading: 1.5, counts: 3, resolution: 0.01 }],
  devices: [
    { id: 'd1', label: 'In the living room', category: 'TV', quantity: 2, year: 2019, outlet: 'left' },
    {
      id: 'd2',
      category: 'router',
      modes: [
        {
          mode: 'NETWORKED_STANDBY',
          hoursPerWeek: { exact: 168 },
          reading: { power: { watts: 7, meterId: 'm1' } },
        },
      ],
    },
    {
      id: 'd3',
      category: 'set-top-box',
      modes: [
        {
          mode: 'STANDBY',
          hoursPerWeek: { range: { low: 90, typical: 100, high: 120 } },
          reading: {
            current: {
              amperes: 0.4,
              loops: 10,
              volts: 238,
              powerFactor: { range: { low: 0.3, typical: 0.4, high: 0.6 } },
              accuracy: { percentOfReading: 2, counts: 5, resolution: 0.001 },
            },
          },
        },
        {
          mode: 'IDLE',
          hoursPerWeek: { exact: 20 },
          reading: { apparentPower: { voltAmperes: 12, powerFactor: { exact: 0.5 } } },
        },
      ],
    },
    {
      id: 'd4',
      category: 'amplifier',
      modes: [
        {
          mode: 'STANDBY',
          schedule: [{ days: ['MONDAY', 'SUNDAY'], from: '00:00', to: '06:00' }],
          hoursPerWeek: { exact: 12 },
          reading: { energy: { wattHours: 24, durationHours: 48 } },
        },
      ],
    },
    { id: 'd5', category: 'game-console', modes: [{ mode: 'STANDBY', reading: { declared: { watts: 4 } } }] },
    { id: 'd6', category: 'freezer' },
  ],
}

/** The same household as REST takes it. */
export const household: Household = {
  supply: { volts: 240, tolerancePercent: 5, hertz: 50 },
  tariff: {
    kind: 'two-part',
    currency: 'EUR',
    relativeUncertainty: 0.1,
    rounding: 'half-up',
    components: [
      {
        kind: 'block',
        name: 'energy',
        per: 'month',
        blocks: [{ upToKwh: 200, pricePerKwh: 0.2 }, { pricePerKwh: 0.25 }],
      },
      {
        kind: 'time-of-use',
        name: 'network',
        timeZone: 'Europe/Berlin',
        bands: [{ name: 'night', pricePerKwh: 0.02, hours: [{ from: '00:00', to: '06:00' }] }],
        otherwisePricePerKwh: 0.05,
      },
    ],
  },
  emissionFactor: { kgCo2ePerKwh: 0.3, gridLoss: 0.05, relativeUncertainty: 0.2 },
  annualUseKwh: 3000,
  weeksPerYear: 52,
  coverageProbability: 0.8,
  catalogueRevision: 1,
  meters: [{ id: 'm1', percentOfReading: 1.5, counts: 3, resolution: 0.01 }],
  devices: [
    { id: 'd1', label: 'In the living room', category: 'TV', quantity: 2, year: 2019, outlet: 'left' },
    {
      id: 'd2',
      category: 'router',
      modes: [
        { mode: 'networked-standby', hoursPerWeek: 168, reading: { kind: 'power', watts: 7, meterId: 'm1' } },
      ],
    },
    {
      id: 'd3',
      category: 'set-top-box',
      modes: [
        {
          mode: 'standby',
          hoursPerWeek: { low: 90, typical: 100, high: 120 },
          reading: {
            kind: 'current',
            amperes: 0.4,
            loops: 10,
            volts: 238,
            powerFactor: { low: 0.3, typical: 0.4, high: 0.6 },
            accuracy: { percentOfReading: 2, counts: 5, resolution: 0.001 },
          },
        },
        {
          mode: 'idle',
          hoursPerWeek: 20,
          reading: { kind: 'apparent-power', voltAmperes: 12, powerFactor: 0.5 },
        },
      ],
    },
    {
      id: 'd4',
      category: 'amplifier',
      modes: [
        {
          mode: 'standby',
          schedule: [{ days: ['monday', 'sunday'], from: '00:00', to: '06:00' }],
          hoursPerWeek: 12,
          reading: { kind: 'energy', wattHours: 24, durationHours: 48 },
        },
      ],
    },
    {
      id: 'd5',
      category: 'game-console',
      modes: [{ mode: 'standby', reading: { kind: 'declared', watts: 4 } }],
    },
    { id: 'd6', category: 'freezer' },
  ],
}
