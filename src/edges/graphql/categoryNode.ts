import type { LabelledCategory } from '../../core/catalogue/labelledCategory.ts'
import { DomainError } from '../../core/fault.ts'
import type { Deps } from '../../useCases/deps.ts'
import { readCategory } from '../../useCases/readCategory.ts'

/** A category as GraphQL hands it out, with the revision that it was read from. */
export interface CategoryNode {
  readonly category: LabelledCategory
  /** The revision that gave the category this state. */
  readonly changedIn: number
  readonly catalogueRevision: number
  /** True where the caller named the revision: then the id names it too, so that one id is always one object. */
  readonly pinned: boolean
}

/** `tv`, or `tv@3` for the category as it was at revision 3. */
export const nameOfCategoryNode = ({ category, catalogueRevision, pinned }: CategoryNode) =>
  pinned ? `${category.code}@${catalogueRevision}` : category.code

const NAMES_NOTHING: ReadonlySet<string> = new Set(['unknown-category', 'unknown-revision'])
const NAME = /^([a-z0-9-]+)(?:@([1-9][0-9]{0,8}))?$/

/** The category that a name made by nameOfCategoryNode stands for, or null. */
export async function loadCategoryNode(deps: Deps, name: string): Promise<CategoryNode | null> {
  const [, code, revision] = NAME.exec(name) ?? []
  if (code === undefined) return null
  try {
    const found = await readCategory(deps, code, revision === undefined ? undefined : Number(revision))
    return found.category.code === code ? { ...found, pinned: revision !== undefined } : null
  } catch (error) {
    if (error instanceof DomainError && NAMES_NOTHING.has(error.code)) return null
    throw error
  }
}
