import type { SourceMark } from '../emissions/emissionFactor.ts'

/** A safety statement that goes wherever the work it speaks of is suggested. */
export interface Caution {
  readonly code: string
  readonly message: string
  readonly source: string
}

/** Where a caution is shown: a kind of reading, or an answer that suggests something. */
export const CAUTION_PLACES = [
  'estimate',
  'reading-power',
  'reading-energy',
  'reading-samples',
  'reading-current',
  'reading-apparent-power',
  'reading-declared',
  'reading-thermal',
  'savings',
  'report',
  'limit-check',
  'base-load',
  'population',
  'verification',
] as const
export type CautionPlace = (typeof CAUTION_PLACES)[number]

/** A caution as the operator keeps it. */
export interface KeptCaution extends Caution {
  readonly appliesTo: readonly CautionPlace[]
  /** How well the source is confirmed; null for common practice without one. For whoever keeps the data, not for answers. */
  readonly mark: SourceMark | null
}

/** All cautions, in the order in which they are shown. */
export type CautionList = readonly KeptCaution[]
