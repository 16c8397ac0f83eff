import { findCategory } from '../core/catalogue/findCategory.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'

/** Whether the newest catalogue, as the caller sees it, has a category with this code, alias or name. */
export async function knowsCategory(deps: Deps, sender: Sender): Promise<(name: string) => boolean> {
  const catalogue = await callersCatalogue(deps, sender, undefined)
  return (name) => findCategory(catalogue, name) !== null
}
