import type { CategoryContent } from '../core/catalogue/categoryContent.ts'
import { mergePatch } from '../core/catalogue/mergePatch.ts'
import { DomainError, type Submitted } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type EditedOverlay, editOverlay, type OverlayOptions } from './editOverlay.ts'
import { ownCategory } from './layCategory.ts'

/**
 * Changes the fields that a merge patch (RFC 7396) names: of the organisation's own category, or, where it has none yet,
 * of the shared one, whose changed copy is then the organisation's own. The pointers of faults are those of the category
 * as it would become.
 * @param readContent checks the shape of what the patch makes of the category
 * @throws DomainError unknown-category; DomainError and FaultyInput as editOverlay
 */
export const patchOverlay = (
  deps: Deps,
  sender: Sender,
  code: string,
  patch: unknown,
  readContent: (merged: unknown) => Submitted<CategoryContent>,
  options: OverlayOptions,
): Promise<EditedOverlay> =>
  editOverlay(deps, sender, code, options, (subject) => {
    const before = subject.own ?? subject.shared
    if (before === undefined)
      throw new DomainError(
        'unknown-category',
        `There is no category with the code "${code}" to change; send a whole one with PUT.`,
        { nearest: [] },
      )
    return ownCategory(code, readContent(mergePatch(before, patch)), subject)
  })
