import { DomainError } from '../../core/fault.ts'
import type { ProblemCode } from '../errors.ts'

/**
 * Tells whoever comes too late with an edit the tag to base the next attempt on, beside what changed.
 * @param staleCode of the refusal, which holds what useCases/requireKnownState.ts puts into it
 */
export async function withTagWhereStale<T>(
  edit: Promise<T>,
  staleCode: ProblemCode,
  tagOf: (code: string, changedIn: number) => string,
): Promise<T> {
  try {
    return await edit
  } catch (error) {
    if (!(error instanceof DomainError) || error.code !== staleCode) throw error
    const { current, changedIn } = error.details as {
      readonly current: { readonly code: string }
      readonly changedIn: number
    }
    throw new DomainError(error.code, error.message, {
      ...error.details,
      etag: tagOf(current.code, changedIn),
    })
  }
}
