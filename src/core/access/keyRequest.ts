import type { Fault } from '../fault.ts'
import type { KeyKind } from './apiKey.ts'
import type { Scope } from './caller.ts'

/** What somebody who issues a key says of it. */
export interface KeyRequest {
  readonly name: string
  /** The organisation that it is for; the issuer's own where none is named. */
  readonly organisation?: string | undefined
  readonly kind: KeyKind
  /** A publishable key needs none named: it has `estimate`. */
  readonly scopes?: readonly Scope[] | undefined
  readonly origins?: readonly string[] | undefined
  readonly expiresAt?: Date | undefined
}

const fault = (pointer: string, code: string, message: string): Fault => ({ pointer, code, message })

/** What is wrong with a request for a key, all at once. */
export function checkKeyRequest(request: KeyRequest, now: Date): Fault[] {
  return [
    ...(request.kind === 'secret' ? secretFaults(request) : publishableFaults(request)),
    ...expiryFaults(request.expiresAt, now),
  ]
}

function secretFaults({ scopes, origins = [] }: KeyRequest): Fault[] {
  return [
    ...(scopes === undefined ? [fault('/scopes', 'required', 'A secret key needs at least one scope.')] : []),
    ...(origins.length > 0
      ? [
          fault(
            '/origins',
            'not-for-secret-keys',
            'Only a publishable key has origins; leave them out, or ask for kind "publishable".',
          ),
        ]
      : []),
  ]
}

function publishableFaults({ scopes, origins = [] }: KeyRequest): Fault[] {
  const more = (scopes ?? []).filter((scope) => scope !== 'estimate')
  return [
    ...(more.length > 0
      ? [
          fault(
            '/scopes',
            'not-publishable',
            `A publishable key can be read by everybody, so it has the scope estimate alone; leave out ${more.join(', ')}.`,
          ),
        ]
      : []),
    ...(origins.length === 0
      ? [fault('/origins', 'required', 'A publishable key needs the origins of the website that it is for.')]
      : []),
  ]
}

/** An expiry that is past would make a key that is good for nothing. */
export function expiryFaults(expiresAt: Date | undefined, now: Date): Fault[] {
  if (expiresAt === undefined || expiresAt > now) return []
  return [
    fault(
      '/expiresAt',
      'in-the-past',
      `expiresAt must be after now, ${now.toISOString()}, but it is ${expiresAt.toISOString()}.`,
    ),
  ]
}
