import { findCategory } from '../core/catalogue/findCategory.ts'
import type { Deps } from './deps.ts'

/** Whether the newest catalogue has a category with this code, alias or name. */
export const knowsCategory = ({ catalogueMemory }: Deps): ((name: string) => boolean) => {
  const catalogue = catalogueMemory.current()
  return (name) => findCategory(catalogue, name) !== null
}
