import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import type { Deps } from './deps.ts'

/** The category that everybody sees under a code; null where there is none. */
export function sharedCategory({ catalogueMemory }: Deps, code: string): LabelledCategory | null {
  const category = catalogueMemory.current().categories.get(code)
  return category ? labelled(category) : null
}
