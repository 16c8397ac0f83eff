import type { LabelledCategory } from '../../core/catalogue/labelledCategory.ts'
import { DomainError } from '../../core/fault.ts'
import type { Sender } from '../../useCases/authorize.ts'
import type { AskedRevisions } from '../../useCases/callersCatalogue.ts'
import type { Deps } from '../../useCases/deps.ts'
import { readCategory } from '../../useCases/readCategory.ts'

/** A category as GraphQL hands it out, with the revisions that it was read from. */
export interface CategoryNode {
  readonly category: LabelledCategory
  /** The revision of its layer that gave the category this state. */
  readonly changedIn: number
  readonly catalogueRevision: number
  readonly overlayRevision: number
  /** The revisions that the caller named: the id names them too, so that one id is always one object. */
  readonly pinned: AskedRevisions
}

/** `tv`, `tv@3` for the category as it was at revision 3, `tv@3+0` or `tv+2` where a revision of the own figures was named. */
export const nameOfCategoryNode = ({ category, pinned }: CategoryNode) => {
  const { catalogueRevision, overlayRevision } = pinned
  const at = catalogueRevision === undefined ? '' : `@${catalogueRevision}`
  return `${category.code}${at}${overlayRevision === undefined ? '' : `+${overlayRevision}`}`
}

const NAMES_NOTHING: ReadonlySet<string> = new Set([
  'unknown-category',
  'unknown-revision',
  'unknown-overlay-revision',
])
const NAME = /^([a-z0-9-]+)(?:@([1-9][0-9]{0,8}))?(?:\+(0|[1-9][0-9]{0,8}))?$/
const numberOf = (text: string | undefined) => (text === undefined ? undefined : Number(text))

/** The category that a name made by nameOfCategoryNode stands for, as the caller sees it, or null. */
export async function loadCategoryNode(
  deps: Deps,
  sender: Sender,
  name: string,
): Promise<CategoryNode | null> {
  const [, code, catalogueRevision, overlayRevision] = NAME.exec(name) ?? []
  if (code === undefined) return null
  const pinned = {
    catalogueRevision: numberOf(catalogueRevision),
    overlayRevision: numberOf(overlayRevision),
  }
  try {
    const found = await readCategory(deps, sender, code, pinned)
    return found.category.code === code ? { ...found, pinned } : null
  } catch (error) {
    if (error instanceof DomainError && NAMES_NOTHING.has(error.code)) return null
    throw error
  }
}
