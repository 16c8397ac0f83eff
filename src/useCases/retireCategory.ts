import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type ChangeOptions, type EditedCategory, editCategory } from './editCategory.ts'
import { editedState } from './editedState.ts'

/**
 * Takes a category out of lists and suggestions. Nothing of it is lost: old inventories are still estimated with it, and it
 * can be restored. One that is retired already stays as it is, and no revision is made.
 * @throws DomainError what editCategory and editedState throw
 */
export async function retireCategory(
  deps: Deps,
  sender: Sender,
  code: string,
  options: Omit<ChangeOptions, 'confirm'>,
): Promise<EditedCategory> {
  return editCategory(deps, sender, { ...options, confirm: false, action: 'retire' }, async (newest) => ({
    category: { ...(await editedState(deps, newest, code, options.basedOn)), retired: true },
  }))
}
