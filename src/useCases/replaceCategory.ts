import { type CategoryContent, categoryFrom, fixedFieldFaults } from '../core/catalogue/categoryContent.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type ChangeOptions, type EditedCategory, editCategory } from './editCategory.ts'
import { editedState } from './editedState.ts'

/**
 * Gives a category new content as a whole. Of a retired one, too, since old inventories are still estimated with it.
 * @throws DomainError what editCategory and editedState throw; FaultyInput
 */
export async function replaceCategory(
  deps: Deps,
  sender: Sender,
  code: string,
  submitted: Submitted<CategoryContent>,
  options: ChangeOptions,
): Promise<EditedCategory> {
  return editCategory(deps, sender, { ...options, action: 'change' }, async (newest) => {
    const { retired } = await editedState(deps, newest, code, options.basedOn)
    const { value, faults } = submitted
    if (value === null) throw new FaultyInput(faults)
    return {
      category: categoryFrom({ ...value, code }, retired),
      faults: [...faults, ...fixedFieldFaults(value, code, retired)],
    }
  })
}
