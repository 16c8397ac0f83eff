import type { FastifyInstance } from 'fastify'
import { serializerCompiler } from 'fastify-type-provider-zod'
import { DomainError } from '../../core/fault.ts'
import { accepts } from './accepts.ts'
import { getCategories } from './getCategories.ts'
import { getCategory } from './getCategory.ts'
import { getLiveness } from './getLiveness.ts'
import { getOpenApi } from './getOpenApi.ts'
import { getProblem } from './getProblem.ts'
import { getReadiness } from './getReadiness.ts'
import { postEstimate } from './postEstimate.ts'
import type { RestContext } from './restContext.ts'
import { type SubmittedTypeProvider, submittedCompiler } from './submitted.ts'

/**
 * The REST routes. Each declares every status that it answers.
 *
 * Answers are checked against their schemas only where `checkAnswers` asks for it, as all tests do; else they are
 * written by JSON.stringify. Measured for an estimate of 20 devices, 26 kB, on Node 20, in CPU time: JSON.stringify
 * 74 µs, the check and JSON.stringify 130 µs, a serializer compiled from the schema 45 µs. The check can find nothing
 * in production that tests and types have not found before; the compiled one would drop what a schema forgot, unseen.
 */
export async function registerRest(
  root: FastifyInstance,
  context: RestContext,
  checkAnswers: boolean,
): Promise<void> {
  await root.register(async (scope) => {
    const app = scope.withTypeProvider<SubmittedTypeProvider>()
    app.setValidatorCompiler(submittedCompiler)
    app.setSerializerCompiler(checkAnswers ? serializerCompiler : () => JSON.stringify)
    app.addHook('onRequest', async (request) => {
      if (accepts(request.headers.accept, 'application/json')) return
      throw new DomainError(
        'not-acceptable',
        'Answers are application/json, which the Accept header does not let through.',
      )
    })
    postEstimate(app, context)
    getCategories(app, context)
    getCategory(app, context)
    getProblem(app)
    getLiveness(app)
    getReadiness(app, context)
    getOpenApi(app)
  })
}
