import { type CategoryContent, categoryFrom, fixedFieldFaults } from '../core/catalogue/categoryContent.ts'
import { mergePatch } from '../core/catalogue/mergePatch.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type ChangeOptions, type EditedCategory, editCategory } from './editCategory.ts'
import { editedState } from './editedState.ts'

/**
 * Changes the fields of a category that a merge patch (RFC 7396) names. The pointers of faults are those of the category
 * as it would become.
 * @param readContent checks the shape of what the patch makes of the category
 * @throws DomainError what editCategory and editedState throw; FaultyInput
 */
export async function patchCategory(
  deps: Deps,
  sender: Sender,
  code: string,
  patch: unknown,
  readContent: (merged: unknown) => Submitted<CategoryContent>,
  options: ChangeOptions,
): Promise<EditedCategory> {
  return editCategory(deps, sender, { ...options, action: 'change' }, async (newest) => {
    const before = await editedState(deps, newest, code, options.basedOn)
    const { value, faults } = readContent(mergePatch(before, patch))
    if (value === null) throw new FaultyInput(faults)
    return {
      category: categoryFrom({ ...value, code }, before.retired),
      faults: [...faults, ...fixedFieldFaults(value, code, before.retired)],
    }
  })
}
