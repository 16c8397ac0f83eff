import type { Submitted } from '../core/fault.ts'
import { contentFrom, type ReferenceDrafts } from '../core/reference/referenceDraft.ts'
import type { ReferenceContents, ReferenceKind } from '../core/reference/referenceEntry.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type EditedReference, editReference, type ReferenceChangeOptions } from './editReference.ts'
import { fittingDraft } from './fittingDraft.ts'
import { knownReference } from './knownReference.ts'

/**
 * Changes a tariff or an emission factor. A retired one, too, since old estimates are still made with it.
 * @param draftFrom what was sent in place of it: a whole, or what a patch makes of the present state
 * @throws DomainError what editReference and knownReference throw; FaultyInput
 */
export async function changeReference<K extends ReferenceKind>(
  deps: Deps,
  sender: Sender,
  kind: K,
  code: string,
  draftFrom: (before: ReferenceContents[K]) => Submitted<ReferenceDrafts[K]>,
  options: ReferenceChangeOptions,
): Promise<EditedReference<K>> {
  return editReference(deps, sender, kind, { ...options, action: 'change' }, async (newest) => {
    const before = await knownReference(deps, newest, kind, code, options.basedOn)
    const { draft, faults } = fittingDraft<K>(draftFrom(before), code, before.retired)
    return { content: contentFrom(kind, { ...draft, code }, before.retired), faults }
  })
}
