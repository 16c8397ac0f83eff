import { type Caller, type Origin, requireScope, type Scope } from '../core/access/caller.ts'
import { isOperator } from '../core/access/organisation.ts'
import { DomainError } from '../core/fault.ts'

/** Who sent a request, known or not. */
export interface Sender {
  readonly caller: Caller | null
  readonly requestId: string
}

/**
 * The request as the origin of what it does, where its caller may do what the scope stands for.
 * @throws DomainError key-required, scope-missing
 */
export function authorize({ caller, requestId }: Sender, scope: Scope): Origin {
  return { caller: requireScope(caller, scope), requestId }
}

/**
 * The same for what only the organisation that runs the service may do.
 * @throws DomainError key-required, scope-missing, operator-only
 */
export function authorizeOperator(sender: Sender, scope: Scope): Origin {
  const origin = authorize(sender, scope)
  if (isOperator(origin.caller)) return origin
  throw new DomainError(
    'operator-only',
    `Only keys of the organisation that runs this service may do this; the key belongs to ${origin.caller.organisation}.`,
  )
}

/** Whether what belongs to an organisation (null: to the service itself) is the caller's to see and to manage. */
export const isWithinReach = (caller: Caller, organisation: string | null) =>
  isOperator(caller) || organisation === caller.organisation

/**
 * Which organisation's a list shows, where the caller asks for one or for none: only its own, but all to the operator.
 * @returns null where there is nothing that the caller may see
 */
export function reachOf(
  caller: Caller,
  asked: string | undefined,
): { readonly organisation: string | undefined } | null {
  if (isOperator(caller)) return { organisation: asked }
  return asked === undefined || asked === caller.organisation ? { organisation: caller.organisation } : null
}
