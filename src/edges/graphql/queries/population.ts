import { stockSchema } from '../../../schemas/population.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { surveySchema } from '../../../schemas/survey.ts'
import { estimateFromStock, estimateFromSurvey } from '../../../useCases/estimatePopulation.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { StockInput, SurveyInput } from '../inputs/population.ts'
import { COST_OF_ONE_DEVICE, SAMPLES_PER_FIELD } from '../limits.ts'
import { StockEstimateType } from '../types/stockEstimate.ts'
import { SurveyEstimateType } from '../types/surveyEstimate.ts'
import { withPointersInto } from '../withPointersInto.ts'

/** What tells the two methods apart over REST; here each has a field of its own. */
const ofMethod = (method: string, input: unknown) => ({ ...(householdOfInput(input) as object), method })

builder.queryFields((t) => ({
  populationOfSurvey: t.field({
    type: SurveyEstimateType,
    nullable: true,
    description:
      'What a whole population draws, from surveyed homes: total, mean, domains and ratio to a known total, with finite population correction, t-intervals and design effect. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: { input: t.arg({ type: SurveyInput, required: true, description: 'The survey.' }) },
    complexity: ({ input: { homes } }) => (homes?.length ?? 0) / SAMPLES_PER_FIELD,
    resolve: (_root, { input }, { deps }) =>
      withPointersInto(input, () =>
        estimateFromSurvey(deps, readShape(surveySchema, ofMethod('survey', input))),
      ),
  }),
  populationOfStock: t.field({
    type: StockEstimateType,
    nullable: true,
    description:
      'What any number of homes draw, by ownership, count, draw and hours, on a ladder from one home to a country. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: { input: t.arg({ type: StockInput, required: true, description: 'The stock of devices.' }) },
    complexity: ({ input: { items, ladder } }) => items.length * ladder.length * COST_OF_ONE_DEVICE,
    resolve: (_root, { input }, { deps, sender }) =>
      withPointersInto(input, () =>
        estimateFromStock(deps, sender, readShape(stockSchema, ofMethod('stock', input))),
      ),
  }),
}))
