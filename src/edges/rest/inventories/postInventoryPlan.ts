import { savingsPlanSchema, savingsRequestSchema } from '../../../schemas/savingsPlan.ts'
import { planWantedSchema } from '../../../schemas/inventoryWants.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { planForInventory } from '../../../useCases/planForInventory.ts'
import { jsonAnswer } from '../answers.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { exampleSavingsPlan } from '../savings/examples.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function postInventoryPlan(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/inventories/:id/savings-plan',
    config: { scope: 'intake' },
    schema: {
      operationId: 'planForInventory',
      tags: ['inventories'],
      summary: 'Plan what a kept household can save, as it was on a visit',
      description:
        'As POST /v1/savings-plans does, for the household as it was on a visit; the last one where none is named. Pointers of faults ' +
        'outside /plan speak of the household. Nothing is stored.',
      params: inventoryParameters,
      querystring: noQuery,
      body: planWantedSchema,
      response: {
        200: jsonAnswer('The plan', savingsPlanSchema, exampleSavingsPlan),
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          'unknown-inventory',
          'unknown-revision',
          'unknown-overlay-revision',
          'unknown-reference-revision',
          'plan-too-large',
          'address-too-long',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      const { id } = fitting(request.params)
      const wanted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const readRequest = (raw: unknown) => readShape(savingsRequestSchema, raw)
      reply.header('cache-control', 'no-store')
      return planForInventory(deps, senderOf(request), id, wanted, readRequest)
    },
  })
}
