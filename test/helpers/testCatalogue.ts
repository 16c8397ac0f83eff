import type { Category, Provenance } from '../../src/core/catalogue/category.ts'

const sample: Provenance = { kind: 'sample', citation: null, n: null }
const published: Provenance = { kind: 'published', citation: 'a citation for the tests', n: null }

const category = (fields: Partial<Category> & Pick<Category, 'code' | 'name'>): Category => ({
  group: 'video',
  aliases: [],
  defaultQuantity: 1,
  retired: false,
  keepPowered: null,
  powerFactor: { low: 0.4, typical: 0.5, high: 0.6 },
  modes: [
    {
      mode: 'standby',
      defaultHoursPerWeek: 140,
      draws: [{ yearFrom: null, yearTo: null, lowW: 0.5, typicalW: 1, highW: 3, provenance: sample }],
    },
  ],
  ...fields,
})

/** A small invented catalogue, in the order of its codes. */
export const testCategories: readonly Category[] = [
  category({ code: 'amplifier', name: 'Amplifier', group: 'audio', aliases: ['hi-fi amplifier'] }),
  category({ code: 'cassette-deck', name: 'Cassette deck', group: 'audio', retired: true }),
  category({
    code: 'freezer',
    name: 'Freezer',
    group: 'kitchen',
    keepPowered: { reason: 'refrigeration', note: 'The food spoils.' },
  }),
  category({ code: 'game-console', name: 'Game console', aliases: ['Spielekonsole für zuhause'] }),
  category({
    code: 'router',
    name: 'Router',
    group: 'networking',
    modes: [
      {
        mode: 'networked-standby',
        defaultHoursPerWeek: 168,
        draws: [{ yearFrom: null, yearTo: null, lowW: 4, typicalW: 8, highW: 12, provenance: published }],
      },
    ],
  }),
  category({ code: 'set-top-box', name: 'Set-top box', aliases: ['TV box', 'decoder'] }),
  category({ code: 'television', name: 'Television', aliases: ['TV', 'telly'] }),
]
