import type { RestContext } from '../restContext.ts'
import type { RestApp } from '../submitted.ts'
import { deleteCategory } from './deleteCategory.ts'
import { getExport } from './getExport.ts'
import { getRevision } from './getRevision.ts'
import { getRevisionCategories } from './getRevisionCategories.ts'
import { getRevisionComparison } from './getRevisionComparison.ts'
import { getRevisions } from './getRevisions.ts'
import { patchCategory } from './patchCategory.ts'
import { postCategory } from './postCategory.ts'
import { postCategoryRestoration } from './postCategoryRestoration.ts'
import { postImport } from './postImport.ts'
import { postRevisionRestoration } from './postRevisionRestoration.ts'
import { putCategory } from './putCategory.ts'

/** The routes that edit the catalogue, and those of its history. */
export const CATALOGUE_ROUTES: readonly ((app: RestApp, context: RestContext) => void)[] = [
  postCategory,
  putCategory,
  patchCategory,
  deleteCategory,
  postCategoryRestoration,
  getRevisions,
  getRevision,
  getRevisionCategories,
  getRevisionComparison,
  postRevisionRestoration,
  getExport,
  postImport,
]
