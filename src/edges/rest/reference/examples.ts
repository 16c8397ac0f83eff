import type { z } from 'zod'
import type { emissionFactorContentSchema, tariffContentSchema } from '../../../schemas/referenceEdit.ts'
import type {
  referenceRevisionListSchema,
  referenceRevisionSchema,
} from '../../../schemas/referenceRevision.ts'

/** The examples of the API description for edits of tariffs and emission factors; prices are invented. */
const winterBlocks = {
  code: 'example-winter-blocks',
  name: 'Invented blocks by the month',
  tariff: {
    kind: 'block',
    currency: 'EUR',
    per: 'month',
    blocks: [{ upToKwh: 200, pricePerKwh: 0.24 }, { pricePerKwh: 0.33 }],
    validFrom: '2026-01-01',
  },
  source: 'invented sample',
} satisfies z.input<typeof tariffContentSchema>
const { code, name, tariff, source } = winterBlocks
const stored = { code, name, retired: false, tariff, source, sampleData: true }
const ended = { ...stored, tariff: { ...tariff, validTo: '2026-12-31' } }

/** National average of Australia; National Greenhouse Accounts Factors, August 2024, Table 1 (V2). */
const published = {
  code: 'example-au-2024',
  regionCode: 'example-au',
  region: 'Australia, national, as an example',
  kind: 'average',
  year: 2024,
  factor: { kgCo2ePerKwh: 0.63 },
  gases: 'CO2e',
  source: 'Australian National Greenhouse Accounts Factors, August 2024, Table 1',
  mark: 'V2',
} satisfies z.input<typeof emissionFactorContentSchema>

export const REFERENCE_REQUESTS = {
  createTariff: { blocks: { summary: 'Rising blocks, invented', value: winterBlocks } },
  replaceTariff: {
    dearer: {
      summary: 'With other prices',
      value: { ...winterBlocks, tariff: { ...tariff, blocks: [{ pricePerKwh: 0.3 }] } },
    },
  },
  patchTariff: { end: { summary: 'Its last day', value: { tariff: { validTo: '2026-12-31' } } } },
  createEmissionFactor: { national: { summary: 'With its citation', value: published } },
  replaceEmissionFactor: {
    loss: {
      summary: 'With a grid loss, invented',
      value: { ...published, factor: { kgCo2ePerKwh: 0.63, gridLoss: 0.05 } },
    },
  },
  patchEmissionFactor: { mark: { summary: 'How well it is confirmed', value: { mark: 'V' } } },
} as const

const exampleRevision = {
  number: 3,
  action: 'change',
  author: { organisation: 'operator', keyId: 'mfrggzdfmztwq2lk' },
  reason: 'The price list ends with the year',
  at: '2026-02-03T10:15:00.000Z',
} as const

export const exampleReferenceRevisionList = {
  items: [exampleRevision],
  nextCursor: null,
  referenceRevision: 3,
} satisfies z.output<typeof referenceRevisionListSchema>

export const exampleReferenceRevision = {
  ...exampleRevision,
  changes: [
    {
      of: 'tariff',
      code,
      kind: 'changed',
      fields: [{ pointer: '/tariff/validTo', after: '2026-12-31' }],
      before: stored,
      after: ended,
    },
  ],
} satisfies z.output<typeof referenceRevisionSchema>
