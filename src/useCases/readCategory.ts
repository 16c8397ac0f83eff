import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { findCategory, nearestCategories } from '../core/catalogue/findCategory.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { layerOf } from '../core/catalogue/layerOf.ts'
import { type RevisionsUsed, revisionsUsed } from '../core/catalogue/revisionsUsed.ts'
import { DomainError } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import { type AskedRevisions, callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'

export interface FoundCategory extends RevisionsUsed {
  readonly category: LabelledCategory
  /** The revision of its own layer that gave the category this state; an edit is based on it. */
  readonly changedIn: number
}

/**
 * One category by its code, name or alias, as the caller sees it, and the revisions that it was read from.
 * @throws DomainError unknown-category, naming the nearest three; unknown-revision, unknown-overlay-revision
 */
export async function readCategory(
  deps: Deps,
  sender: Pick<Sender, 'caller'>,
  name: string,
  asked: AskedRevisions = {},
): Promise<FoundCategory> {
  const catalogue = await callersCatalogue(deps, sender, asked)
  const category = findCategory(catalogue, name)
  if (category) return foundIn(catalogue, category)
  const nearest = nearestCategories(catalogue, name).map(({ code, name: full }) => ({ code, name: full }))
  throw new DomainError(
    'unknown-category',
    `There is no category "${name}". The nearest are: ${nearest.map(({ code }) => code).join(', ')}.`,
    { nearest },
  )
}

const foundIn = (catalogue: Catalogue, category: Parameters<typeof labelled>[0]): FoundCategory => ({
  category: labelled(category, layerOf(catalogue, category.code)),
  changedIn: catalogue.changedIn.get(category.code)!,
  ...revisionsUsed(catalogue),
})
