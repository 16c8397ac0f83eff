import type { Inventory, Visit, VisitKind } from '../../../core/inventory/inventory.ts'
import { showInventory, showTerms } from '../../../schemas/inventory.ts'
import { planWantedSchema, verificationWantedSchema } from '../../../schemas/inventoryWants.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { savingsRequestSchema } from '../../../schemas/savingsPlan.ts'
import { verificationRequestSchema } from '../../../schemas/verification.ts'
import { listStoredEstimates } from '../../../useCases/listStoredEstimates.ts'
import { planForInventory } from '../../../useCases/planForInventory.ts'
import { readInventory } from '../../../useCases/readInventory.ts'
import { verifyInventory } from '../../../useCases/verifyInventory.ts'
import { STORED_ESTIMATE_LIST } from '../../inventoryLists.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { SavingsPlanOptionsInput } from '../inputs/savingsPlan.ts'
import { PlannedMeasureInput } from '../inputs/verification.ts'
import { COST_OF_ONE_DEVICE } from '../limits.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { withoutNulls } from '../withoutNulls.ts'
import { VisitKindEnum } from './inventoryEnums.ts'
import { SavingsPlanType } from './savingsPlan.ts'
import { StoredEstimateType } from './storedEstimate.ts'
import { VerificationType } from './verification.ts'

/** A kept household's devices are not known before it is read: counted as a plan or a verification of fifty. */
const COST_OF_A_HOUSEHOLD = 50 * 8 * COST_OF_ONE_DEVICE

const VisitType = builder.objectRef<Visit & { readonly kind: VisitKind }>('Visit').implement({
  description: 'All that was found on one day.',
  fields: (t) => ({
    date: t.exposeString('date', { description: 'Day of the visit, YYYY-MM-DD.' }),
    kind: t.expose('kind', { type: VisitKindEnum, description: 'Which visit it is.' }),
    notes: t.string({
      nullable: true,
      description: 'Notes of the assessor.',
      resolve: ({ notes }) => notes ?? null,
    }),
    deviceCount: t.int({
      description: 'Number of entries in the list of devices.',
      resolve: ({ devices }) => devices.length,
    }),
    content: t.string({
      description: 'Meters and devices as JSON, in the form in which REST has them.',
      resolve: ({ meters = [], devices }) => JSON.stringify({ meters, devices }),
    }),
  }),
})

export const InventoryType = builder.node(builder.objectRef<Inventory>('Inventory'), {
  description: "One of your organisation's households.",
  id: { description: 'Opaque name of the household, unique in the whole service.', resolve: ({ id }) => id },
  loadOne: (id, { deps, sender }) => nodeOrNull(() => readInventory(deps, sender, id)),
  fields: (t) => ({
    identifier: t.exposeString('id', { description: 'What mutations and REST name it by.' }),
    reference: t.string({
      description: 'Your own name for it.',
      resolve: ({ content }) => content.reference,
    }),
    version: t.exposeInt('version', {
      description: '1 when it is made, one more with every change; what a change is based on.',
    }),
    createdAt: t.exposeString('createdAt', { description: 'When it was made (RFC 3339).' }),
    updatedAt: t.exposeString('updatedAt', { description: 'When it was last changed (RFC 3339).' }),
    notes: t.string({
      nullable: true,
      description: 'What is to be remembered.',
      resolve: ({ content: { notes } }) => notes ?? null,
    }),
    terms: t.string({
      description:
        'Supply, tariff, emission factor, use and the like as JSON, in the form in which REST has them.',
      resolve: (inventory) => JSON.stringify(showTerms(inventory)),
    }),
    visits: t.field({
      type: [VisitType],
      description: 'The visits in the order of their dates.',
      resolve: (inventory) => showInventory(inventory).visits,
    }),
    estimates: t.connection(
      {
        type: StoredEstimateType,
        description: 'The estimates that are kept of it, newest first.',
        complexity: pageCost,
        resolve: async ({ id }, pageArguments, { deps, sender }) => {
          const page = readShape(pageArgumentsSchema, withoutNulls(pageArguments))
          const of = { value: { inventory: id }, faults: [], raw: null }
          const { window, filter } = listWindow(STORED_ESTIMATE_LIST, page, of)
          const part = await listStoredEstimates(deps, sender, id, window)
          return connectionOf(STORED_ESTIMATE_LIST, part, filter)
        },
      },
      { name: 'StoredEstimateConnection', description: 'A page of stored estimates.' },
      { name: 'StoredEstimateEdge', description: 'A stored estimate and its place in the list.' },
    ),
    savingsPlan: t.field({
      type: SavingsPlanType,
      nullable: true,
      description:
        'What it can save, as it was on a visit. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
      args: {
        visit: t.arg.string({ description: 'Date of the visit, YYYY-MM-DD; the last one by default.' }),
        plan: t.arg({ type: SavingsPlanOptionsInput, description: 'Options of the plan.' }),
      },
      complexity: { field: COST_OF_A_HOUSEHOLD, multiplier: 1 },
      resolve: ({ id }, given, { deps, sender }) =>
        planForInventory(deps, sender, id, readShape(planWantedSchema, householdOfInput(given)), (raw) =>
          readShape(savingsRequestSchema, raw),
        ),
    }),
    verification: t.field({
      type: VerificationType,
      nullable: true,
      description:
        'What was saved between two visits. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
      args: {
        before: t.arg.string({ description: 'Date of the visit before; the first one by default.' }),
        after: t.arg.string({ description: 'Date of the visit after; the last one by default.' }),
        plan: t.arg({
          type: [PlannedMeasureInput],
          description: 'Measures that were meant to be carried out in between, 1 to 100.',
        }),
      },
      complexity: { field: COST_OF_A_HOUSEHOLD, multiplier: 1 },
      resolve: ({ id }, given, { deps, sender }) =>
        verifyInventory(
          deps,
          sender,
          id,
          readShape(verificationWantedSchema, householdOfInput(given)),
          (raw) => readShape(verificationRequestSchema, raw),
        ),
    }),
  }),
})
