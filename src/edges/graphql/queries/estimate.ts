import { FaultyInput } from '../../../core/fault.ts'
import { estimateRequestSchema } from '../../../schemas/estimateRequest.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { estimateHousehold } from '../../../useCases/estimateHousehold.ts'
import { builder } from '../builder.ts'
import { costOfSums } from '../costOfSums.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { EstimateInput } from '../inputs/estimate.ts'
import { LIST_COST, SAMPLES_PER_FIELD } from '../limits.ts'
import { pointerIntoInput } from '../pointerIntoInput.ts'
import { EstimateType } from '../types/estimate.ts'

type Devices = (typeof EstimateInput.$inferInput)['devices']

const samplesIn = (devices: Devices): number =>
  devices
    .flatMap(({ modes }) => modes ?? [])
    .reduce((sum, { reading }) => sum + (reading?.samples?.watts.length ?? 0), 0)

builder.queryField('estimate', (t) =>
  t.field({
    type: EstimateType,
    nullable: true,
    description:
      'What the devices of a household draw while nobody uses them: per device and in total, with intervals and with flags that tell measured from assumed. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: { input: t.arg({ type: EstimateInput, required: true, description: 'The household.' }) },
    complexity: ({ input }) => ({
      field: costOfSums(input) + samplesIn(input.devices) / SAMPLES_PER_FIELD,
      // `devices` counts as LIST_COST entries, so together they count as many as were sent.
      multiplier: Math.max(input.devices.length / LIST_COST, 1),
    }),
    resolve: async (_root, { input }, { deps, sender }) => {
      try {
        return await estimateHousehold(
          deps,
          sender,
          readShape(estimateRequestSchema, householdOfInput(input)),
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
