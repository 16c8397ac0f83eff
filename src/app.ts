import { type FastifyBaseLogger, type FastifyInstance, fastify } from 'fastify'
import { registerGraphql } from './edges/graphql/index.ts'
import { mayAsk } from './edges/rest/authorize.ts'
import { addCallers, insistOnScopes } from './edges/rest/callers.ts'
import { addCrossOrigin } from './edges/rest/crossOrigin.ts'
import { addCommonHeaders } from './edges/rest/commonHeaders.ts'
import { addDeprecation } from './edges/rest/deprecation.ts'
import { handleErrors, refuseUnroutable } from './edges/rest/handleErrors.ts'
import { registerRest } from './edges/rest/index.ts'
import { insistOnHttp } from './edges/rest/insistOnHttp.ts'
import { describeApi } from './edges/rest/openApi.ts'
import { limitArrival } from './edges/rest/limitArrival.ts'
import { addMetrics } from './edges/rest/getMetrics.ts'
import type { Metrics } from './edges/rest/metrics.ts'
import { addRateLimits, type RateLimits } from './edges/rest/rateLimits.ts'
import { readJson } from './edges/rest/readJson.ts'
import { refuseGarbage } from './edges/rest/refuseGarbage.ts'
import { requestIdOf } from './edges/rest/requestId.ts'
import { traceIdOf } from './edges/rest/traceIdOf.ts'
import type { RestContext } from './edges/rest/restContext.ts'
import { RequestLog, requestLogOf } from './log.ts'
import type { Deps } from './useCases/deps.ts'

export interface AppOptions extends Omit<RestContext, 'deps'> {
  readonly version: string
  readonly production: boolean
  readonly log: FastifyBaseLogger
  readonly bodyLimitBytes: number
  /** Websites whose scripts may call what a publishable key is good for, without one; none where it is not given. */
  readonly corsOrigins?: readonly string[]
  /** How often callers may ask; as often as they like where it is not given. */
  readonly rateLimits?: RateLimits
  /** Addresses and networks of proxies whose X-Forwarded-For is believed; none where it is not given. */
  readonly trustedProxies?: readonly string[]
  /** What is counted, and whether anybody may read it at /metrics or only the operator's admins; nothing where it is not given. */
  readonly metrics?: { readonly counted: Metrics; readonly isOpen: boolean } | undefined
  /** Whether there is a page at /docs; there is where it is not given. */
  readonly docs?: boolean
  /** Whether every REST answer is checked against its schema before it is sent; for tests. */
  readonly checkAnswers?: boolean
  /** How long a request may take to arrive; for tests of slow callers. */
  readonly arrivalMs?: number
}

/**
 * A caller that sends a byte now and then must not hold a connection: the parts of a request arrive in time or not at
 * all. A minute lets the largest import through on a line of 3 Mbit/s.
 */
const ARRIVAL_MS = 60_000
const HEADERS_MS = 15_000

/** The app with all its edges, not listening. */
export async function buildApp(deps: Deps, options: AppOptions): Promise<FastifyInstance> {
  const arrivalMs = options.arrivalMs ?? ARRIVAL_MS
  const app: FastifyInstance = fastify({
    loggerInstance: options.log,
    logController: new RequestLog(),
    genReqId: requestIdOf,
    childLoggerFactory: (log, bindings, options, request) =>
      requestLogOf(log, bindings, options, traceIdOf(request)),
    // An empty list would be taken for one, and costs a look at every request.
    trustProxy: options.trustedProxies?.length ? [...options.trustedProxies] : false,
    bodyLimit: options.bodyLimitBytes,
    // A hook does this, since one route takes a stream in: see limitArrival.
    requestTimeout: 0,
    connectionTimeout: 2 * arrivalMs,
    // A missing Host is refused by insistOnHttp, since node would do it without a word.
    http: {
      headersTimeout: Math.min(HEADERS_MS, arrivalMs),
      connectionsCheckingInterval: Math.min(HEADERS_MS, arrivalMs) / 5,
      requireHostHeader: false,
    },
    forceCloseConnections: 'idle',
    // Refused by a hook of handleErrors instead, with a problem answer.
    return503OnClosing: false,
    routerOptions: { maxParamLength: 500 },
    frameworkErrors: refuseUnroutable,
    clientErrorHandler: refuseGarbage,
  })
  app.removeContentTypeParser('text/plain')
  readJson(app)
  // First, so that what the hooks after it refuse carries them, too.
  addCommonHeaders(app)
  addCrossOrigin(app, deps, options.corsOrigins ?? [])
  addDeprecation(app)
  handleErrors(app)
  insistOnHttp(app)
  limitArrival(app, arrivalMs)
  addCallers(app, deps)
  if (options.rateLimits) addRateLimits(app, options.rateLimits, deps.clock)
  insistOnScopes(app)
  if (options.metrics) addMetrics(app, options.metrics.counted, options.metrics.isOpen)
  await describeApi(app, options.version, options.docs)
  await registerRest(app, { deps, ...options }, options.checkAnswers ?? false)
  await app.register(async (scope) => {
    scope.addHook('onRequest', mayAsk(options.anonymousEstimates))
    await registerGraphql(scope, deps, options)
  })
  return app
}
