import { z } from 'zod'
import { DomainError } from '../../core/fault.ts'
import { jsonAnswer } from './answers.ts'
import { unlimitedProblemAnswers } from './problem.ts'
import type { RestContext } from './restContext.ts'
import { fitting, noQuery, type RestApp } from './submitted.ts'

const readinessSchema = z
  .strictObject({
    status: z.literal('ready'),
    checks: z.strictObject({ database: z.string(), catalogue: z.string() }),
    catalogueRevision: z.int(),
  })
  .meta({ id: 'Readiness' })
const exampleReadiness = {
  status: 'ready',
  checks: { database: 'answers', catalogue: 'loaded' },
  catalogueRevision: 1,
}

export function getReadiness(app: RestApp, { deps, checkStore }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/health/ready',
    config: { unlimited: true },
    schema: {
      operationId: 'readReadiness',
      tags: ['service'],
      summary: 'Whether the service can do its job',
      description:
        'Asks the database, and whether there is a catalogue. checks of the 503 answer says what is wrong.',
      querystring: noQuery,
      response: {
        200: jsonAnswer('It can', readinessSchema, exampleReadiness),
        ...unlimitedProblemAnswers('not-ready'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      reply.header('cache-control', 'no-store')
      const failure = await failureOf(checkStore)
      if (failure) request.log.warn({ err: failure.cause }, 'the database check failed')
      const { revision, categories } = deps.catalogueMemory.current()
      const checks = {
        database: failure ? 'does not answer' : 'answers',
        catalogue: categories.size > 0 ? 'loaded' : 'empty',
      }
      if (failure || categories.size === 0)
        throw new DomainError('not-ready', 'The service cannot give estimates now; checks says why.', {
          checks,
        })
      return { status: 'ready', checks, catalogueRevision: revision }
    },
  })
}

/** Why a check fails; null where it holds. */
async function failureOf(check: () => Promise<void>): Promise<{ cause: unknown } | null> {
  try {
    await check()
    return null
  } catch (cause) {
    return { cause }
  }
}
