import { readShape } from '../../../schemas/readShape.ts'
import { estimateWantedSchema } from '../../../schemas/storedEstimate.ts'
import { storeEstimate } from '../../../useCases/storeEstimate.ts'
import { builder } from '../builder.ts'
import { StoredEstimateType } from '../types/storedEstimate.ts'
import { mutationResult, orUserError } from '../types/userErrors.ts'
import { withoutNulls } from '../withoutNulls.ts'
import { IDEMPOTENCY_KEY } from './createInventory.ts'

const StoreEstimateInput = builder.inputType('StoreEstimateInput', {
  description: 'What is to be estimated and kept.',
  fields: (t) => ({
    inventoryId: t.string({ required: true, description: 'Id of the household.' }),
    visit: t.string({ description: 'Date of the visit, YYYY-MM-DD; the last one by default.' }),
    coverageProbability: t.float({
      description: "Probability of the intervals, 0.5 to 0.99; the household's by default.",
    }),
    catalogueRevision: t.int({ description: 'Catalogue revision; the newest by default.' }),
    referenceRevision: t.int({
      description: 'Revision of tariffs and emission factors; the newest by default.',
    }),
    overlayRevision: t.int({
      description: "Revision of your organisation's own figures; 0 for none of them; the newest by default.",
    }),
    idempotencyKey: t.string({ description: IDEMPOTENCY_KEY }),
  }),
})

const Result = mutationResult(
  'StoreEstimateResult',
  'The stored estimate, or why there is none.',
  StoredEstimateType,
)

builder.mutationField('storeEstimate', (t) =>
  t.field({
    type: Result,
    nullable: true,
    description:
      'Estimates a household as it was on a visit, and keeps the result. Needs a key with the scope intake.',
    args: { input: t.arg({ type: StoreEstimateInput, required: true, description: 'What is wanted.' }) },
    resolve: (_root, { input: { inventoryId, idempotencyKey, ...rest } }, { deps, sender }) =>
      orUserError(async () => {
        const wanted = readShape(estimateWantedSchema, withoutNulls(rest))
        return (await storeEstimate(deps, sender, inventoryId, wanted, idempotencyKey ?? null)).result
      }),
  }),
)
