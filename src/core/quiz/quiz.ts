import type { Group, Mode } from '../catalogue/category.ts'
import type { DeviceMode } from '../inventory/household.ts'
import type { HoursChoice } from './hoursChoice.ts'
import type { Label } from './labelOf.ts'
import type { QuizText } from './quizLanguage.ts'
import type { QuizFigure, QuizReadingKind } from './quizReading.ts'
import type { StayOn } from './stayOn.ts'

/** What is asked of one kind of device. */
export interface QuizQuestion extends Label {
  /** Code of the category. */
  readonly category: string
  readonly help: string
  /** Whether the figures behind it are invented. */
  readonly sampleData: boolean
  /** `default` is how many a home has that has any. */
  readonly count: { readonly min: number; readonly max: number; readonly default: number }
  /** Where it is true, hours are not asked: `hours` has the one choice `usual`. */
  readonly alwaysOn: boolean
  readonly keepPowered: StayOn | null
  /** Whether the figures depend on the year of manufacture, so that asking for it makes them surer. */
  readonly yearMatters: boolean
  /** The choices, and what each makes of a device's modes in an estimate. */
  readonly hours: readonly { readonly choice: HoursChoice; readonly modes: readonly DeviceMode[] }[]
  /** The modes that a reading may be of; the first where nothing is said. */
  readonly readingModes: readonly Mode[]
}

export interface QuizGroup {
  readonly group: Group
  readonly label: string
  readonly questions: readonly QuizQuestion[]
}

interface Choice {
  readonly label: string
  readonly help: string
}

/** The questions of a self-check, in one language, of one revision of the catalogue. */
export interface Quiz {
  readonly catalogueRevision: number
  /** Of the figures of the caller's organisation that lay over it; 0 where there were none. */
  readonly overlayRevision: number
  readonly language: string
  /** The languages that it can be asked in, by their own names. */
  readonly languages: readonly { readonly language: string; readonly name: string }[]
  readonly sampleData: boolean
  readonly sampleDataNotice: string | null
  readonly texts: Readonly<Record<QuizText, string>>
  readonly hoursChoices: readonly (Choice & { readonly choice: HoursChoice })[]
  readonly readings: readonly (Choice & {
    readonly kind: QuizReadingKind
    readonly figures: readonly { readonly name: QuizFigure; readonly label: string; readonly unit: string }[]
  })[]
  readonly modes: readonly { readonly mode: Mode; readonly label: string }[]
  readonly groups: readonly QuizGroup[]
}

/** Only a part of the quiz. */
export interface QuizFilter {
  readonly group?: Group | undefined
  /** Codes. */
  readonly categories?: readonly string[] | undefined
}
