import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type ChangeOptions, type EditedCategory, editCategory } from './editCategory.ts'
import { editedState } from './editedState.ts'

/**
 * Brings a retired category back as it is. One that is in use already stays as it is, and no revision is made.
 * @throws DomainError what editCategory and editedState throw; FaultyInput where another category has taken one of its names
 */
export async function restoreCategory(
  deps: Deps,
  sender: Sender,
  code: string,
  options: Omit<ChangeOptions, 'confirm'>,
): Promise<EditedCategory> {
  return editCategory(deps, sender, { ...options, confirm: false, action: 'restore' }, async (newest) => ({
    category: { ...(await editedState(deps, newest, code, options.basedOn)), retired: false },
  }))
}
