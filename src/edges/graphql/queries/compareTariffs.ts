import { FaultyInput } from '../../../core/fault.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { tariffComparisonRequestSchema } from '../../../schemas/tariffComparison.ts'
import { compareTariffs } from '../../../useCases/compareTariffs.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { TariffComparisonInput } from '../inputs/tariffComparison.ts'
import { COST_OF_ONE_DEVICE } from '../limits.ts'
import { pointerIntoInput } from '../pointerIntoInput.ts'
import { TariffComparisonType } from '../types/tariffComparison.ts'

/** A tariff takes a dozen sums over all devices, each about as long as the sum behind one device. */
const SUMS_OF_ONE_TARIFF = 12

builder.queryField('compareTariffs', (t) =>
  t.field({
    type: TariffComparisonType,
    nullable: true,
    description:
      "What one household's standby costs under several tariffs, and how much more than under the first, with intervals. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.",
    args: {
      input: t.arg({ type: TariffComparisonInput, required: true, description: 'Household and tariffs.' }),
    },
    complexity: ({ input: { devices, tariffs } }) => ({
      field: (devices.length + tariffs.length * SUMS_OF_ONE_TARIFF) * COST_OF_ONE_DEVICE,
      multiplier: 1,
    }),
    resolve: async (_root, { input }, { deps, sender }) => {
      try {
        return await compareTariffs(
          deps,
          sender,
          readShape(tariffComparisonRequestSchema, householdOfInput(input)),
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
