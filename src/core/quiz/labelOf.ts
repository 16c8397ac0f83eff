import type { Category } from '../catalogue/category.ts'
import type { Words } from './quizLanguage.ts'

/** What a kind of device is called, and the language of that. */
export interface Label {
  readonly label: string
  readonly labelLanguage: string
}

/** The language's own label where it has one, else the name as whoever keeps the catalogue wrote it. */
export function labelOf({ code, name }: Category, { spoken, catalogueLanguage }: Words): Label {
  const own = Object.hasOwn(spoken.categories, code) ? spoken.categories[code] : undefined
  return own
    ? { label: own.label, labelLanguage: spoken.language }
    : { label: name, labelLanguage: catalogueLanguage }
}
