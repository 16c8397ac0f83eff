import { ApolloServer } from '@apollo/server'
import {
  ApolloServerPluginInlineTraceDisabled,
  ApolloServerPluginLandingPageDisabled,
  ApolloServerPluginSchemaReportingDisabled,
  ApolloServerPluginUsageReportingDisabled,
} from '@apollo/server/plugin/disabled'
import { fastifyApolloHandler } from '@as-integrations/fastify'
import type {} from '@fastify/swagger'
import type { FastifyInstance } from 'fastify'
import type { Deps } from '../../useCases/deps.ts'
import { answerHttpError } from './answerHttpError.ts'
import type { GraphqlContext } from './context.ts'
import { formatError } from './formatError.ts'
import { GRAPHQL_LIMITS } from './limits.ts'
import { reportInternalErrors } from './reportInternalErrors.ts'
import { limitAliases } from './rules/limitAliases.ts'
import { limitCost } from './rules/limitCost.ts'
import { limitDepth } from './rules/limitDepth.ts'
import { limitDirectives } from './rules/limitDirectives.ts'
import { schema } from './schema.ts'

export interface GraphqlOptions {
  /** Whether answers keep back what helps developers only: suggestions for misspelt names. */
  readonly production: boolean
  /** Whether estimates are given to callers without a key; they are where it is not given. */
  readonly anonymousEstimates?: boolean
}

/**
 * Serves the schema at POST and GET /graphql. The app that it is given decides who may call; the app's own
 * closing drains it.
 *
 * Written policy: introspection is on, since the API is made for other parties' tools and the schema is committed
 * beside the code. Batching and persisted queries are off: each operation is one request that every limit sees.
 */
export async function registerGraphql(
  app: FastifyInstance,
  deps: Deps,
  { production, anonymousEstimates = true }: GraphqlOptions,
): Promise<void> {
  const apollo = new ApolloServer<GraphqlContext>({
    schema,
    formatError,
    introspection: true,
    hideSchemaDetailsFromClientErrors: production,
    includeStacktraceInErrorResponses: false,
    csrfPrevention: true,
    allowBatchedHttpRequests: false,
    persistedQueries: false,
    parseOptions: { maxTokens: GRAPHQL_LIMITS.tokens },
    validationRules: [
      limitDepth(GRAPHQL_LIMITS.depth),
      limitAliases(GRAPHQL_LIMITS.aliases),
      limitDirectives(GRAPHQL_LIMITS.directives),
    ],
    plugins: [limitCost(GRAPHQL_LIMITS.cost), reportInternalErrors, ...NOTHING_LEAVES],
    nodeEnv: production ? 'production' : 'development',
    logger: app.log,
    // The process stops where it was started, in main.ts.
    stopOnTerminationSignals: false,
  })
  await apollo.start()
  // The app drains: its onClose comes after the last request under way. fastifyApolloDrainPlugin is for servers
  // that are stopped the other way round; from here it would close the app and so wait for itself.
  app.addHook('onClose', () => apollo.stop())
  await app.register(async (scope) => {
    scope.setErrorHandler(answerHttpError)
    scope.route({
      method: ['GET', 'POST'],
      url: '/graphql',
      schema: { hide: true },
      handler: fastifyApolloHandler(apollo, {
        context: async ({ id, log, caller }) => ({
          deps,
          sender: { caller, requestId: id },
          anonymousEstimates,
          requestId: id,
          log,
        }),
      }),
    })
  })
}

/** No page that loads a third party's scripts, no reports to anybody, whatever the environment says. */
const NOTHING_LEAVES = [
  ApolloServerPluginLandingPageDisabled(),
  ApolloServerPluginUsageReportingDisabled(),
  ApolloServerPluginSchemaReportingDisabled(),
  ApolloServerPluginInlineTraceDisabled(),
]
