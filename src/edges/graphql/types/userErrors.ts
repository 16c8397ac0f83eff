import { unwrapResolverError } from '@apollo/server/errors'
import { DomainError, FaultyInput } from '../../../core/fault.ts'
import { translate, type Translated } from '../../errors.ts'
import { builder } from '../builder.ts'

builder.mutationType({
  description:
    'Everything that changes something. A refusal is a typed error in the result, and then nothing was changed.',
})

type CommonTypename = 'FaultyInputError' | 'AccessError' | 'NotFoundError' | 'ConflictError'
/** Those of one feature, which say more of a refusal; they join the results of its own mutations. */
type FurtherTypename =
  | 'StaleCategoryError'
  | 'StaleCatalogueError'
  | 'LargeChangeError'
  | 'StaleTariffError'
  | 'StaleEmissionFactorError'
  | 'StaleProposalError'
type Typename = CommonTypename | FurtherTypename

/** Why a mutation was refused, as its payload holds it. */
export class UserError {
  readonly typename: Typename
  readonly code: string
  readonly message: string
  readonly faults: NonNullable<Translated['errors']>
  /** What else the refusal tells, such as the `newest` revision, for types that a feature adds. */
  readonly details: Readonly<Record<string, unknown>>

  constructor(typename: Typename, { code, detail, errors = [], extra = {} }: Translated) {
    this.typename = typename
    this.code = code
    this.message = detail
    this.faults = errors
    this.details = extra
  }
}

export const UserErrorInterface = builder.interfaceRef<UserError>('UserError').implement({
  description:
    'Why a mutation was refused; nothing was changed. Further types will join: ask for code and message on UserError itself.',
  resolveType: ({ typename }) => typename,
  fields: (t) => ({
    code: t.exposeString('code', { description: 'Stable name in kebab-case; /problems/{code} explains it.' }),
    message: t.exposeString('message', { description: 'One sentence that says what is allowed.' }),
  }),
})

const InputFaultType = builder.objectRef<UserError['faults'][number]>('InputFault').implement({
  description: 'One thing that is wrong with what was sent.',
  fields: (t) => ({
    pointer: t.exposeString('pointer', {
      description:
        'Where in `input`, or, where the mutation has none, in its arguments; JSON Pointer (RFC 6901).',
    }),
    code: t.exposeString('code', { description: 'Kind of fault.' }),
    message: t.exposeString('message', { description: 'What is allowed there.' }),
  }),
})

const named = (name: string, description: string) =>
  builder.objectRef<UserError>(name).implement({ description, interfaces: [UserErrorInterface] })

const TYPES = {
  FaultyInputError: builder.objectRef<UserError>('FaultyInputError').implement({
    description: 'The arguments have faults.',
    interfaces: [UserErrorInterface],
    fields: (t) => ({
      faults: t.field({
        type: [InputFaultType],
        description: 'Every fault, all at once.',
        resolve: ({ faults }) => faults,
      }),
    }),
  }),
  AccessError: named('AccessError', 'The key is missing, or may not do this.'),
  NotFoundError: named('NotFoundError', 'Something that the arguments name does not exist.'),
  ConflictError: named(
    'ConflictError',
    'Something else happened first, or the state of the subject does not allow this.',
  ),
} satisfies Record<CommonTypename, unknown>

/** The type for each status of the one table in edges/errors.ts; a refusal with another status is an error of the whole field. */
const TYPE_OF_STATUS: Readonly<Record<number, CommonTypename>> = {
  401: 'AccessError',
  403: 'AccessError',
  404: 'NotFoundError',
  409: 'ConflictError',
  412: 'ConflictError',
  422: 'FaultyInputError',
  428: 'FaultyInputError',
}

/** Codes that have a type of their own. */
const TYPE_OF_CODE: Readonly<Record<string, FurtherTypename>> = {
  'stale-category': 'StaleCategoryError',
  'stale-revision': 'StaleCatalogueError',
  'stale-tariff': 'StaleTariffError',
  'stale-emission-factor': 'StaleEmissionFactorError',
  'stale-proposal': 'StaleProposalError',
  'large-change': 'LargeChangeError',
}

/** A refusal as a payload holds it, or null where the error is not one. */
function userErrorOf(error: unknown): UserError | null {
  const cause = unwrapResolverError(error)
  if (!(cause instanceof DomainError) && !(cause instanceof FaultyInput)) return null
  const translated = translate(cause)
  const typename = TYPE_OF_CODE[translated.code] ?? TYPE_OF_STATUS[translated.status]
  return typename === undefined ? null : new UserError(typename, translated)
}

/** The work's result, or why it was refused. Whatever else it throws is not the caller's to correct, and goes on. */
export async function orUserError<T>(work: () => Promise<T>): Promise<T | UserError> {
  try {
    return await work()
  } catch (error) {
    const refusal = userErrorOf(error)
    if (refusal === null) throw error
    return refusal
  }
}

type SuccessType<T> = ReturnType<ReturnType<typeof builder.objectRef<T>>['implement']>

/**
 * The type of a mutation's result: what it made, or one of the user errors. Its resolver returns what orUserError gives.
 * @param further types of errors that the mutation has besides the common ones
 */
export function mutationResult<T extends object>(
  name: string,
  description: string,
  success: SuccessType<T>,
  further: readonly SuccessType<UserError>[] = [],
) {
  return builder.unionType(name, {
    description,
    types: [success, ...Object.values(TYPES), ...further],
    resolveType: (value) => (value instanceof UserError ? value.typename : success.name),
  })
}
