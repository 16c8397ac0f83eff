import type { Standing } from '../../../core/inventory/compareWithToday.ts'
import type { EstimateWithStanding } from '../../../useCases/listStoredEstimates.ts'
import { readStoredEstimate } from '../../../useCases/readStoredEstimate.ts'
import { builder } from '../builder.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { EstimateType } from './estimate.ts'
import { ChangeCauseEnum } from './inventoryEnums.ts'

const EstimateChangeType = builder.objectRef<NonNullable<Standing['change']>>('EstimateChange').implement({
  description: "Today's expected total less the stored one.",
  fields: (t) => ({
    energyKwhPerYear: t.exposeFloat('energyKwhPerYear', { description: 'Energy, kWh a year.' }),
    costPerYear: t.exposeFloat('costPerYear', {
      nullable: true,
      description: 'Cost a year; null where the currency is another one.',
    }),
    emissionsKgCo2ePerYear: t.exposeFloat('emissionsKgCo2ePerYear', {
      description: 'Emissions, kg CO2e a year.',
    }),
  }),
})

const StandingType = builder.objectRef<Standing>('EstimateStanding').implement({
  description: 'How a stored estimate stands to what would be estimated today.',
  fields: (t) => ({
    outOfDate: t.exposeBoolean('outOfDate', {
      description: 'Whether the same estimate would come out otherwise today.',
    }),
    because: t.field({
      type: [ChangeCauseEnum],
      description: 'What moved on since, as far as it changes the estimate.',
      complexity: 1,
      resolve: ({ because }) => because,
    }),
    change: t.expose('change', {
      type: EstimateChangeType,
      nullable: true,
      description: 'By how much; null where nothing changed, or there can be no estimate today.',
    }),
  }),
})

/** Both ids, of which neither holds a point. */
const ID = /^([a-z2-7]{16})\.([a-z2-7]{16})$/

export const StoredEstimateType = builder.node(builder.objectRef<EstimateWithStanding>('StoredEstimate'), {
  description: 'An estimate of a household as it was on one visit, kept with all that it was made from.',
  id: {
    description: 'Opaque name of the estimate, unique in the whole service.',
    resolve: ({ stored: { inventory, id } }) => `${inventory}.${id}`,
  },
  loadOne: async (text, { deps, sender }) => {
    const [, inventory, id] = ID.exec(text) ?? []
    if (inventory === undefined || id === undefined) return null
    return nodeOrNull(() => readStoredEstimate(deps, sender, inventory, id))
  },
  fields: (t) => ({
    estimateId: t.string({
      description: 'What REST names it by, within its inventory.',
      resolve: ({ stored }) => stored.id,
    }),
    visit: t.string({
      description: 'Date of the visit, YYYY-MM-DD.',
      resolve: ({ stored }) => stored.visit,
    }),
    madeAt: t.string({
      description: 'When it was made (RFC 3339).',
      resolve: ({ stored }) => stored.madeAt,
    }),
    catalogueRevision: t.int({
      description: 'The catalogue revision that it was made with.',
      resolve: ({ stored }) => stored.catalogueRevision,
    }),
    methodVersion: t.string({
      description: 'The estimation method that it was made with.',
      resolve: ({ stored }) => stored.methodVersion,
    }),
    estimate: t.field({
      type: EstimateType,
      description: 'The estimate as it was made.',
      resolve: ({ stored }) => stored.result,
    }),
    standing: t.expose('standing', {
      type: StandingType,
      description: 'How it stands to what would be estimated today.',
    }),
  }),
})
