import { mergePatch } from '../core/catalogue/mergePatch.ts'
import type { Submitted } from '../core/fault.ts'
import type { ReferenceDrafts } from '../core/reference/referenceDraft.ts'
import type { ReferenceKind } from '../core/reference/referenceEntry.ts'
import type { Sender } from './authorize.ts'
import { changeReference } from './changeReference.ts'
import type { Deps } from './deps.ts'
import type { EditedReference, ReferenceChangeOptions } from './editReference.ts'

/**
 * Changes the fields of a tariff or an emission factor that a merge patch (RFC 7396) names. The pointers of faults are
 * those of the entry as it would become.
 * @param readDraft checks the shape of what the patch makes of the entry
 * @throws what changeReference throws
 */
export const patchReference = <K extends ReferenceKind>(
  deps: Deps,
  sender: Sender,
  kind: K,
  code: string,
  patch: unknown,
  readDraft: (merged: unknown) => Submitted<ReferenceDrafts[K]>,
  options: ReferenceChangeOptions,
): Promise<EditedReference<K>> =>
  changeReference(deps, sender, kind, code, (before) => readDraft(mergePatch(before, patch)), options)
