import { emissionFactorListSchema, emissionFactorQuerySchema } from '../../../schemas/emissionFactor.ts'
import { listEmissionFactors } from '../../../useCases/listEmissionFactors.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer, notModified, REFERENCE_HEADERS } from '../answers.ts'
import { referenceDataTag, sendTagged } from '../conditional.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleEmissionFactorList } from './examples.ts'
import { EMISSION_FACTORS } from './lists.ts'

export function getEmissionFactors(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/emission-factors',
    schema: {
      operationId: 'listEmissionFactors',
      tags: ['money and grid'],
      summary: 'List the published emission factors that the service has',
      description:
        'In the order of their codes, in pages. Average factors are for what a household uses, marginal ones for what it ' +
        'saves; they are never mixed. Each has its source, what it counts, and how well it is confirmed. Where a year is ' +
        'asked for that a region has no factor of, those of the nearest year are given, and warnings says so.',
      querystring: emissionFactorQuerySchema,
      response: {
        200: jsonAnswer('One page of emission factors', emissionFactorListSchema, exampleEmissionFactorList, {
          ...REFERENCE_HEADERS,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers('faulty-cursor', 'unknown-reference-revision'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor, ...filter } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, EMISSION_FACTORS, filter)
      const page = await listEmissionFactors(deps, filter, { limit, after })
      const { items, next, warnings, referenceRevision } = page
      const nextCursor = next === null ? null : writeListCursor({ code: next }, EMISSION_FACTORS, filter)
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/emission-factors', { ...filter, limit }, nextCursor))
      const tagged = { tag: referenceDataTag(referenceRevision), referenceRevision }
      return sendTagged(request, reply, tagged, { items, nextCursor, warnings, referenceRevision })
    },
  })
}
