import { z } from 'zod'
import { revisionNumber } from '../../../schemas/catalogueRevision.ts'
import { referenceRevisionSchema, showReferenceRevision } from '../../../schemas/referenceRevision.ts'
import { readReferenceChanges, readReferenceRevision } from '../../../useCases/readReferenceRevision.ts'
import { jsonAnswer, notModified, REFERENCE_HEADERS } from '../answers.ts'
import { referenceDataTag, sendTagged } from '../conditional.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleReferenceRevision } from './examples.ts'

const params = z.strictObject({ number: revisionNumber.describe('Number of a revision') })

export function getReferenceRevision(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/reference-revisions/:number',
    schema: {
      operationId: 'readReferenceRevision',
      tags: ['money and grid'],
      summary: 'Read one revision of tariffs and emission factors, and what it changed',
      description:
        'Each entry that it changed, before and after and field by field. GET /v1/tariffs?referenceRevision=… and ' +
        'GET /v1/emission-factors?referenceRevision=… give all as they were then.',
      params,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The revision', referenceRevisionSchema, exampleReferenceRevision, REFERENCE_HEADERS),
        304: notModified,
        ...problemAnswers('unknown-reference-revision', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { number } = fitting(request.params)
      const revision = await readReferenceRevision(deps, number)
      const shown = showReferenceRevision(revision, await readReferenceChanges(deps, number))
      const tagged = { tag: referenceDataTag(number), referenceRevision: number }
      return sendTagged(request, reply, tagged, shown)
    },
  })
}
