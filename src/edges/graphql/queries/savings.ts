import { readShape } from '../../../schemas/readShape.ts'
import { savingsRequestSchema } from '../../../schemas/savingsPlan.ts'
import { listMeasures } from '../../../useCases/listMeasures.ts'
import { planSavings } from '../../../useCases/planSavings.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { SavingsPlanInput } from '../inputs/savingsPlan.ts'
import { COST_OF_ONE_DEVICE } from '../limits.ts'
import { MeasureKindEnum } from '../types/savingsEnums.ts'
import { SavingsMeasureType } from '../types/savingsMeasure.ts'
import { SavingsPlanType } from '../types/savingsPlan.ts'
import { withPointersInto } from '../withPointersInto.ts'

/** The measures of a plan are drawn for each device: measured, some eight times the sums of its estimate. */
const SUMS_OF_ONE_DEVICE = 8

builder.queryFields((t) => ({
  savingsPlan: t.field({
    type: SavingsPlanType,
    nullable: true,
    description:
      'What a household can save: every measure at every place, the best set within a budget, and what must stay powered, with intervals. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: {
      input: t.arg({ type: SavingsPlanInput, required: true, description: 'Household and options.' }),
    },
    complexity: ({ input: { devices } }) => ({
      field: devices.length * SUMS_OF_ONE_DEVICE * COST_OF_ONE_DEVICE,
      multiplier: 1,
    }),
    resolve: (_root, { input }, { deps, sender }) =>
      withPointersInto(input, () =>
        planSavings(deps, sender, readShape(savingsRequestSchema, householdOfInput(input))),
      ),
  }),
  savingsMeasures: t.field({
    type: [SavingsMeasureType],
    nullable: true,
    description: 'What a household can do about standby, in the order in which plans offer it.',
    args: { kind: t.arg({ type: MeasureKindEnum, description: 'Only measures of this kind.' }) },
    resolve: (_root, { kind }, { deps }) => listMeasures(deps, kind ?? undefined),
  }),
}))
