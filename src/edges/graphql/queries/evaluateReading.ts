import { FaultyInput } from '../../../core/fault.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { readingToEvaluateSchema } from '../../../schemas/readingEvaluation.ts'
import { evaluateReading } from '../../../useCases/evaluateReading.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { ReadingEvaluationInput } from '../inputs/readingEvaluation.ts'
import { COST_OF_ONE_DEVICE, SAMPLES_PER_FIELD } from '../limits.ts'
import { pointerIntoInput } from '../pointerIntoInput.ts'
import { ReadingEvaluationType } from '../types/readingEvaluation.ts'

builder.queryField('evaluateReading', (t) =>
  t.field({
    type: ReadingEvaluationType,
    nullable: true,
    description:
      'One reading turned into real power, with each step in words and formula, what was assumed, and what makes it hard to believe. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: {
      input: t.arg({ type: ReadingEvaluationInput, required: true, description: 'The reading.' }),
    },
    complexity: ({ input: { reading } }) =>
      COST_OF_ONE_DEVICE + (reading.samples?.watts.length ?? 0) / SAMPLES_PER_FIELD,
    resolve: async (_root, { input }, { deps, sender }) => {
      try {
        return await evaluateReading(
          deps,
          sender,
          readShape(readingToEvaluateSchema, householdOfInput(input)),
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
