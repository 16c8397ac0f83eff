import { DomainError } from '../fault.ts'

/** What a key may do. `admin` holds all the others within its organisation, and reads the audit trail. */
export const SCOPES = ['estimate', 'intake', 'catalogue:edit', 'admin'] as const
export type Scope = (typeof SCOPES)[number]

/** Who sends a request, as its key says. */
export interface Caller {
  readonly organisation: string
  readonly keyId: string
  readonly scopes: readonly Scope[]
}

/** What an audit event says of the request behind it. */
export interface Origin {
  readonly caller: Caller
  readonly requestId: string
}

/**
 * The caller, where it may do what the scope stands for.
 * @throws DomainError key-required where there is no caller; scope-missing, naming the scope
 */
export function requireScope(caller: Caller | null, scope: Scope): Caller {
  if (caller === null)
    throw new DomainError(
      'key-required',
      `This needs a key with the scope ${scope}, in Authorization: Bearer …`,
    )
  if (caller.scopes.includes(scope) || caller.scopes.includes('admin')) return caller
  throw new DomainError(
    'scope-missing',
    `This needs the scope ${scope}; the key has: ${caller.scopes.join(', ')}.`,
    {
      scope,
    },
  )
}
