import type { FastifyInstance } from 'fastify'
import { serializerCompiler } from 'fastify-type-provider-zod'
import { DomainError } from '../../core/fault.ts'
import { preferred } from './accepts.ts'
import { getCategories } from './getCategories.ts'
import { getCategory } from './getCategory.ts'
import { getLiveness } from './getLiveness.ts'
import { getOpenApi } from './getOpenApi.ts'
import { getProblem } from './getProblem.ts'
import { getReadiness } from './getReadiness.ts'
import { postBaseLoadEvaluation } from './postBaseLoadEvaluation.ts'
import { postEstimate } from './postEstimate.ts'
import { postReadingEvaluation } from './postReadingEvaluation.ts'
import { ACCESS_ROUTES } from './access/index.ts'
import { postIntakeBatch } from './intake/postIntakeBatch.ts'
import { INVENTORY_ROUTES } from './inventories/index.ts'
import { QUIZ_ROUTES } from './quiz/index.ts'
import { REFERENCE_ROUTES } from './reference/index.ts'
import { LIMIT_ROUTES } from './limits/index.ts'
import { MONEY_ROUTES } from './money/index.ts'
import { postPopulationEstimate } from './population/postPopulationEstimate.ts'
import { SAVINGS_ROUTES } from './savings/index.ts'
import { CATALOGUE_ROUTES } from './catalogue/index.ts'
import { postVerification } from './verification/postVerification.ts'
import { PROPOSAL_ROUTES } from './proposals/index.ts'
import { OVERLAY_ROUTES } from './overlay/index.ts'
import type { RestContext } from './restContext.ts'
import { type SubmittedTypeProvider, submittedCompiler } from './submitted.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The media types that a route can answer in; JSON alone where nothing is said. */
    readonly produces?: readonly string[]
  }
}
const JSON_ALONE = ['application/json']

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
      const { produces = JSON_ALONE } = request.routeOptions.config
      if (preferred(request.headers.accept, produces) !== null) return
      throw new DomainError(
        'not-acceptable',
        `Answers are ${produces.join(' or ')}, which the Accept header does not let through.`,
      )
    })
    postEstimate(app, context)
    postReadingEvaluation(app, context)
    postBaseLoadEvaluation(app, context)
    getCategories(app, context)
    getCategory(app, context)
    for (const addRoute of CATALOGUE_ROUTES) addRoute(app, context)
    for (const addRoute of PROPOSAL_ROUTES) addRoute(app, context)
    for (const addRoute of OVERLAY_ROUTES) addRoute(app, context)
    for (const addRoute of ACCESS_ROUTES) addRoute(app, context)
    for (const addRoute of INVENTORY_ROUTES) addRoute(app, context)
    postIntakeBatch(app, context)
    for (const addRoute of MONEY_ROUTES) addRoute(app, context)
    for (const addRoute of REFERENCE_ROUTES) addRoute(app, context)
    for (const addRoute of LIMIT_ROUTES) addRoute(app, context)
    for (const addRoute of QUIZ_ROUTES) addRoute(app, context)
    for (const addRoute of SAVINGS_ROUTES) addRoute(app, context)
    postPopulationEstimate(app, context)
    postVerification(app, context)
    getProblem(app)
    getLiveness(app)
    getReadiness(app, context)
    getOpenApi(app)
  })
}
