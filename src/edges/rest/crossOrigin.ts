import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import type { Deps } from '../../useCases/deps.ts'

/** How long a browser may keep the answer to a preflight, s: a key that is revoked closes its origins this late at most. */
const KEPT_SECONDS = 300
const READABLE =
  'etag, content-language, catalogue-revision, x-request-id, retry-after, ratelimit, ratelimit-policy, link, deprecation, sunset'
const SENDABLE = 'authorization, content-type, if-none-match, x-request-id'

/**
 * Lets scripts of other websites call the routes that a publishable key is good for, and no others (Fetch standard, CORS
 * protocol): from the configured origins, and from those of every valid publishable key.
 *
 * A browser asks first, by OPTIONS, and sends no key with that. So a preflight is allowed where any valid publishable key
 * names the origin; which key the call itself brings, and whether that one is for this origin, callers.ts checks then.
 * Nothing more is opened by it: no cookie takes part, and without a valid key a call gets what anybody gets.
 *
 * Registered before whatever refuses requests, so that a page can read why its call was refused.
 */
export function addCrossOrigin(app: FastifyInstance, deps: Deps, configured: readonly string[]): void {
  const open = new Map<string, string[]>()
  app.addHook('onRoute', ({ url, method, config }) => {
    if (config?.publishable) open.set(url, [...(open.get(url) ?? []), ...[method].flat()])
  })
  const methodsAt = ({ url }: FastifyRequest) => open.get(url.split('?', 1)[0]!)
  app.addHook('onRequest', async (request, reply) => {
    const methods = methodsAt(request)
    const { origin } = request.headers
    if (methods === undefined || origin === undefined) return
    if (!configured.includes(origin) && !(await deps.keyMemory.isOrigin(origin))) return
    reply.header('access-control-allow-origin', origin)
    if (request.method === 'OPTIONS') allow(reply, methods)
    else reply.header('access-control-expose-headers', READABLE)
  })
  // Last, so that it adds to what the route itself said.
  app.addHook('onSend', async (request, reply) => {
    if (methodsAt(request) === undefined) return
    const others = reply.getHeader('vary')
    reply.header('vary', others === undefined ? 'origin' : `${String(others)}, origin`)
  })
}

function allow(reply: FastifyReply, methods: readonly string[]): void {
  reply.headers({
    'access-control-allow-methods': methods.join(', '),
    'access-control-allow-headers': SENDABLE,
    'access-control-max-age': KEPT_SECONDS,
  })
}
