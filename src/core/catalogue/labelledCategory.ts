import type { Category } from './category.ts'

/** A category as it is answered: it says whether any of its figures is invented. */
export interface LabelledCategory extends Category {
  readonly sampleData: boolean
}

export const labelled = (category: Category): LabelledCategory => ({
  ...category,
  sampleData: category.modes.some(({ draws }) =>
    draws.some(({ provenance }) => provenance.kind === 'sample'),
  ),
})
