import {
  newOrganisationSchema,
  organisationAnswerSchema,
  showOrganisation,
} from '../../../schemas/organisation.ts'
import { makeOrganisation } from '../../../useCases/makeOrganisation.ts'
import { jsonAnswer } from '../answers.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleOrganisation } from './examples.ts'

export function postOrganisation(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/organisations',
    config: { scope: 'admin' },
    schema: {
      operationId: 'makeOrganisation',
      tags: ['access'],
      summary: 'Make an organisation, which can then be given keys',
      description:
        "For the operator's admins. A utility or a programme gets an organisation of its own; what belongs to it, no " +
        'other organisation sees. Issue its first admin key with POST /v1/api-keys.',
      querystring: noQuery,
      body: newOrganisationSchema,
      response: {
        201: jsonAnswer('The organisation', organisationAnswerSchema, exampleOrganisation),
        ...problemAnswers(...NEEDS_KEY, ...NEEDS_BODY, 'operator-only', 'organisation-exists'),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      const submitted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const made = await makeOrganisation(deps, senderOf(request), submitted)
      return reply.code(201).header('cache-control', 'no-store').send(showOrganisation(made))
    },
  })
}
