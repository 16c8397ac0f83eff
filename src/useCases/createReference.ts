import { DomainError, type Submitted } from '../core/fault.ts'
import { contentFrom, type ReferenceDrafts } from '../core/reference/referenceDraft.ts'
import { KIND_IN_WORDS, type ReferenceKind } from '../core/reference/referenceEntry.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type EditedReference, editReference, type ReferenceEditOptions } from './editReference.ts'
import { fittingDraft } from './fittingDraft.ts'

/**
 * Adds a tariff or an emission factor under a code that was never used.
 * @param options.code where the address names it too, and asks that there be nothing at it
 * @throws DomainError tariff-exists, emission-factor-exists or, with a code, already-there; what editReference throws
 */
export async function createReference<K extends ReferenceKind>(
  deps: Deps,
  sender: Sender,
  kind: K,
  submitted: Submitted<ReferenceDrafts[K]>,
  options: ReferenceEditOptions & { readonly code?: string },
): Promise<EditedReference<K>> {
  return editReference(deps, sender, kind, { ...options, action: 'create' }, (newest) => {
    const code = options.code ?? submitted.value?.code
    if (code !== undefined && newest.entries[kind].has(code)) throw taken(kind, code, options.code)
    const { draft, faults } = fittingDraft<K>(submitted, code, false)
    return { content: contentFrom(kind, draft, false), faults }
  })
}

const taken = (kind: ReferenceKind, code: string, named: string | undefined) =>
  named === undefined
    ? new DomainError(
        `${kind}-exists`,
        `There is a ${KIND_IN_WORDS[kind]} ${code} already; a code is never used twice, also not after it was retired.`,
        { code },
      )
    : new DomainError(
        'already-there',
        `There is a ${KIND_IN_WORDS[kind]} ${code} already, and the request asks that there be none.`,
        { code },
      )
