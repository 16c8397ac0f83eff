import { isIP } from 'node:net'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { DomainError } from '../../core/fault.ts'
import { openMemoryRequestCounter } from '../../useCases/memoryRequestCounter.ts'
import { networkOf } from './networkOf.ts'

declare module 'fastify' {
  interface FastifyRequest {
    /** Whether the request was counted for its caller. */
    isCounted: boolean
  }
  interface FastifyContextConfig {
    /** Whether a route is open however often it is asked; for what watches the service. */
    readonly unlimited?: boolean
  }
}

/** Requests a minute; 0 for as many as come. */
export interface RateLimits {
  readonly perKey: number
  readonly perNetwork: number
}

const WINDOW_SECONDS = 60

interface Policy {
  readonly name: 'key' | 'network'
  readonly quota: number
  readonly caller: string
  readonly counter: ReturnType<typeof openMemoryRequestCounter>
}

/**
 * Keeps one caller from taking everything: counts requests by key, or by network where there is no key that only its owner
 * knows, and refuses those above the limit before anything is read or looked up for them. A publishable key stands in a
 * website, so its visitors are told apart by their networks.
 *
 * Every answer of a limited route says what is left, in the fields of draft-ietf-httpapi-ratelimit-headers-11. What was
 * refused before it could be counted, such as a key that is not valid, is counted for the network.
 *
 * Keys and networks have counters of their own, so that a flood from many networks makes nobody with a key forgotten.
 */
export function addRateLimits(app: FastifyInstance, limits: RateLimits, clock: () => Date): void {
  const counters = { key: openMemoryRequestCounter(), network: openMemoryRequestCounter() }
  const policyOf = (request: FastifyRequest): Policy => {
    const { secretKeyId } = request
    return secretKeyId === null
      ? {
          name: 'network',
          quota: limits.perNetwork,
          caller: networkOf(addressOf(request)),
          counter: counters.network,
        }
      : { name: 'key', quota: limits.perKey, caller: secretKeyId, counter: counters.key }
  }
  const count = async (request: FastifyRequest, reply: FastifyReply) => {
    // Browsers ask by OPTIONS before they ask; those are answered without a look at anything.
    if (request.isCounted || request.routeOptions.config.unlimited || request.method === 'OPTIONS') return
    const policy = policyOf(request)
    if (policy.quota === 0) return
    request.isCounted = true
    const { requests, secondsLeft } = await policy.counter.count(policy.caller, WINDOW_SECONDS, clock())
    const remaining = Math.max(policy.quota - requests, 0)
    reply.header('ratelimit-policy', `"${policy.name}";q=${policy.quota};w=${WINDOW_SECONDS}`)
    reply.header('ratelimit', `"${policy.name}";r=${remaining};t=${secondsLeft}`)
    return requests > policy.quota ? { policy, secondsLeft } : undefined
  }
  app.decorateRequest('isCounted', false)
  app.addHook('onRequest', async (request, reply) => {
    const exceeded = await count(request, reply)
    if (exceeded) throw quotaExceeded(exceeded.policy, exceeded.secondsLeft)
  })
  app.addHook('onSend', async (request, reply) => {
    await count(request, reply)
  })
}

/** The caller's address; that of the connection where a proxy that is believed named none that can be read. */
const addressOf = ({ ip, socket }: FastifyRequest) => (isIP(ip) ? ip : (socket.remoteAddress ?? ''))

function quotaExceeded({ name, quota }: Policy, secondsLeft: number): DomainError {
  const who = name === 'key' ? 'with this key' : 'without a key from this network'
  return new DomainError(
    'quota-exceeded',
    `More than ${quota} requests came ${who} within a minute. Wait ${secondsLeft} s.`,
    { retryAfterSeconds: secondsLeft, 'violated-policies': [name] },
  )
}
