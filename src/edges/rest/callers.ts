import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { ApiKey } from '../../core/access/apiKey.ts'
import type { Caller, Scope } from '../../core/access/caller.ts'
import { DomainError } from '../../core/fault.ts'
import { keyInAddress } from '../../schemas/keyInAddress.ts'
import { authenticate } from '../../useCases/authenticate.ts'
import { authorize } from '../../useCases/authorize.ts'
import { type BadKeys, openBadKeys } from '../../useCases/badKeys.ts'
import type { Deps } from '../../useCases/deps.ts'
import { networkOf } from './networkOf.ts'
import { senderOf } from './senderOf.ts'

declare module 'fastify' {
  interface FastifyRequest {
    /** Who sent the request, by its key; null where it came without one. */
    caller: Caller | null
    /** The id of its key, where only its owner knows the key; null for publishable keys, and without one. */
    secretKeyId: string | null
  }
  interface FastifyContextConfig {
    /** What a key needs for the route; a route without it is open to all. */
    readonly scope?: Scope
    /** Whether a key that stands in a website is good for the route. */
    readonly publishable?: boolean
  }
}

/** Finds out once for each request who sends it. */
export function addCallers(app: FastifyInstance, deps: Deps): void {
  const badKeys = openBadKeys()
  app.decorateRequest('caller', null)
  app.decorateRequest('secretKeyId', null)
  app.addHook('onRequest', async (request) => {
    if (keyInAddress(request.raw.url ?? ''))
      throw new DomainError(
        'key-in-query',
        'The address holds a key. Send it in Authorization: Bearer …, and replace it, since addresses are kept in logs.',
      )
    const { authorization } = request.headers
    if (authorization !== undefined) request.caller = await callerOf(request, authorization, deps, badKeys)
  })
}

/** Refuses a request before its body is read where its route needs more than its sender has. */
export function insistOnScopes(app: FastifyInstance): void {
  app.addHook('onRequest', async (request) => {
    const { scope } = request.routeOptions.config
    if (scope !== undefined) authorize(senderOf(request), scope)
  })
}

async function callerOf(
  request: FastifyRequest,
  authorization: string,
  deps: Deps,
  badKeys: BadKeys,
): Promise<Caller> {
  const [, text = ''] = /^Bearer +([^ ]+) *$/i.exec(authorization) ?? []
  const found = await authenticate(deps, badKeys, { text, address: networkOf(request.ip) })
  if ('waitSeconds' in found)
    throw new DomainError(
      'too-many-bad-keys',
      `Too many keys that are not valid came from this address. Wait ${found.waitSeconds} s.`,
      { retryAfterSeconds: found.waitSeconds },
    )
  if ('fault' in found) {
    request.log.info({ fault: found.fault, keyId: found.keyId }, 'key refused')
    throw new DomainError('key-unknown', 'The key that was sent is not valid.')
  }
  if (found.key.kind === 'publishable') insistOnItsPlace(request, found.key)
  else request.secretKeyId = found.key.id
  return { organisation: found.key.organisation, keyId: found.key.id, scopes: found.key.scopes }
}

/** A key that everybody can read in a website is good for what a website needs, and nowhere else. */
function insistOnItsPlace(request: FastifyRequest, { origins }: ApiKey): void {
  if (request.routeOptions.config.publishable !== true)
    throw new DomainError(
      'publishable-key',
      'This is a publishable key, which is good for POST /v1/estimates and the quiz alone.',
    )
  if (!origins.includes(request.headers.origin ?? ''))
    throw new DomainError(
      'foreign-origin',
      'The header Origin names none of the origins that the key is for.',
    )
}
