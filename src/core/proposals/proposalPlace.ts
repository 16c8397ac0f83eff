import type { Mode } from '../catalogue/category.ts'

/** Which typical draw a proposal speaks of. */
export interface ProposalPlace {
  /** Code of the category. */
  readonly category: string
  readonly mode: Mode
  /** Years of manufacture, as today's draw has them; null is open. */
  readonly yearFrom: number | null
  readonly yearTo: number | null
}
