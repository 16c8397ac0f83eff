import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import type { Deps } from './deps.ts'
import { type Edit, storeEdit } from './storeEdit.ts'

export interface StoredEdit {
  /** Null where nothing changed, so that no revision was made. */
  readonly revision: Revision | null
  /** The catalogue revision that holds the result. */
  readonly catalogueRevision: number
}

/** Stores an edit of the catalogue as one new revision. @throws whatever `decide` throws */
export async function storeRevision(
  { catalogueMemory, catalogueStore, clock }: Deps,
  edit: Edit<Catalogue, Category>,
): Promise<StoredEdit> {
  const { revision, newest } = await storeEdit(
    { memory: catalogueMemory, store: catalogueStore, clock },
    edit,
  )
  return { revision, catalogueRevision: newest }
}
