import type { ReferenceKind } from '../core/reference/referenceEntry.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type EditedReference, editReference, type ReferenceChangeOptions } from './editReference.ts'
import { knownReference } from './knownReference.ts'

/**
 * Takes a tariff or an emission factor out of lists, or brings a retired one back as it is. Nothing of it is lost: old
 * estimates are still made with it. One that is as it is wanted already stays so, and no revision is made.
 * @throws DomainError what editReference and knownReference throw; FaultyInput where a factor has a twin meanwhile
 */
export async function retireReference<K extends ReferenceKind>(
  deps: Deps,
  sender: Sender,
  kind: K,
  code: string,
  { reason, basedOn, retired }: ReferenceChangeOptions & { readonly retired: boolean },
): Promise<EditedReference<K>> {
  const action = retired ? 'retire' : 'restore'
  return editReference(deps, sender, kind, { reason, action }, async (newest) => ({
    content: { ...(await knownReference(deps, newest, kind, code, basedOn)), retired },
  }))
}
