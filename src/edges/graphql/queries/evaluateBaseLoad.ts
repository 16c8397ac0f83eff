import { FaultyInput } from '../../../core/fault.ts'
import { baseLoadRequestSchema } from '../../../schemas/baseLoad.ts'
import { readBlocks } from '../../../schemas/baseLoadBlocks.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { evaluateBaseLoad } from '../../../useCases/evaluateBaseLoad.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { BaseLoadInput } from '../inputs/baseLoad.ts'
import { COST_OF_ONE_DEVICE, SAMPLES_PER_FIELD } from '../limits.ts'
import { pointerIntoInput } from '../pointerIntoInput.ts'
import { BaseLoadEvaluationType } from '../types/baseLoad.ts'

builder.queryField('evaluateBaseLoad', (t) =>
  t.field({
    type: BaseLoadEvaluationType,
    nullable: true,
    description:
      'What a home draws when nobody uses anything, read off its meter’s intervals: several estimators side by side, one of them explained with its interval, and how much of it an inventory explains. Files in ESPI or CSV go to POST /v1/base-load/evaluate. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: { input: t.arg({ type: BaseLoadInput, required: true, description: 'The data.' }) },
    complexity: ({ input: { blocks, inventory } }) => {
      const values = blocks.reduce((sum, { wattHours, watts }) => sum + (wattHours ?? watts ?? []).length, 0)
      return (1 + (inventory?.devices.length ?? 0)) * COST_OF_ONE_DEVICE + values / SAMPLES_PER_FIELD
    },
    resolve: async (_root, { input }, { deps, sender }) => {
      const request = readShape(baseLoadRequestSchema, householdOfInput(input))
      try {
        return await evaluateBaseLoad(deps, sender, request, async () =>
          readBlocks(request.value?.blocks ?? [], request.value?.timeZone),
        )
      } catch (error) {
        if (!(error instanceof FaultyInput)) throw error
        throw new FaultyInput(
          error.faults.map((fault) => ({ ...fault, pointer: pointerIntoInput(fault.pointer, input) })),
        )
      }
    },
  }),
)
