import type { Range } from '../catalogue/category.ts'
import type { Layer } from '../catalogue/overlay.ts'
import type { Caution } from '../cautions/caution.ts'
import type { Flag, Interval, Warning } from '../estimate/estimate.ts'
import type { Mode } from '../catalogue/category.ts'
import type { Supply } from '../inventory/household.ts'
import type { UncertaintyRule } from './meterIsGoodEnough.ts'
import type { Meter, Reading } from './reading.ts'
import type { SeriesAnalysis } from './series/analyseSeries.ts'
import type { Step } from './steps/step.ts'

/** One reading as a caller sends it to be evaluated: only the reading is required. */
export interface ReadingToEvaluate {
  readonly reading: Reading
  readonly supply?: Supply
  readonly meters?: readonly Meter[]
  /** A category's code, name or alias: for its power factor and its usual draw. */
  readonly category?: string
  readonly mode?: Mode
  /** Year of manufacture. */
  readonly year?: number
  /** Devices that draw as much as the one that was read; 1 where it is left out. */
  readonly quantity?: number
  readonly coverageProbability?: number
  /** Crest factor of the current over the power factor, for the uncertainty rule of IEC 62301's second edition. */
  readonly maximumCurrentRatio?: number
  readonly catalogueRevision?: number
  /** Of the figures of the caller’s organisation; 0 asks for the shared catalogue alone. */
  readonly overlayRevision?: number
}

/** What a reading says: real power, how sure, and how it was worked out. */
export interface ReadingEvaluation {
  readonly catalogueRevision: number
  /** Of the figures of the caller’s organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly methodVersion: string
  readonly coverageProbability: number
  readonly kind: Reading['kind']
  readonly supply: Supply
  readonly quantity: number
  readonly category: string | null
  readonly categoryName: string | null
  /** Whose figures of the category went in, or were held against the reading. */
  readonly catalogueLayer: Layer | null
  /** True where figures of the category that went in, or were held against the reading, are invented. */
  readonly sampleData: boolean
  readonly confidence: Flag
  /** All of the quantity together, as the two below. */
  readonly powerW: Interval
  /** Only where current or apparent power was read. */
  readonly apparentPowerVa?: Interval
  readonly reactivePowerVar?: Interval
  /** What turned VA into W; all three the same where it was read. */
  readonly powerFactor?: Range
  /** Only where samples were read. */
  readonly series?: SeriesAnalysis
  /** IEC 62301's rules on uncertainty; empty where no meter was read or its accuracy is not known. */
  readonly uncertaintyRules: readonly UncertaintyRule[]
  readonly assumptions: readonly string[]
  readonly steps: readonly Step[]
  readonly warnings: readonly Warning[]
  readonly guidance: readonly Caution[]
  readonly cautions: readonly Caution[]
}
