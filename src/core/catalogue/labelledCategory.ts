import type { Category } from './category.ts'
import type { Layer } from './overlay.ts'

/** A category as it is answered: it says whether any of its figures is invented, and whose it is. */
export interface LabelledCategory extends Category {
  readonly sampleData: boolean
  readonly layer: Layer
}

/** True where any draw of the category is invented; its hours and power factor then count as invented too. */
export const hasSampleFigures = ({ modes }: Category): boolean =>
  modes.some(({ draws }) => draws.some(({ provenance }) => provenance.kind === 'sample'))

export const labelled = (category: Category, layer: Layer = 'shared'): LabelledCategory => ({
  ...category,
  sampleData: hasSampleFigures(category),
  layer,
})
