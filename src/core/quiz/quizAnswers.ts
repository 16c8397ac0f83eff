import type { Mode } from '../catalogue/category.ts'
import type { HoursChoice } from './hoursChoice.ts'
import type { QuizReading } from './quizReading.ts'

/** What somebody answered of one kind of device. */
export interface QuizAnswer {
  /** Code of the category, as the quiz gave it. */
  readonly category: string
  /** How many there are; with 0 the rest of the answer does not count. */
  readonly count: number
  readonly hours?: HoursChoice | undefined
  /** Year of manufacture. */
  readonly year?: number | undefined
  /** Of one of them. */
  readonly reading?: QuizReading | undefined
  /** What the device was doing when it was read. */
  readonly readingMode?: Mode | undefined
}

/** The answers to a quiz. */
export interface QuizAnswers {
  /** Of the quiz that they answer. */
  readonly catalogueRevision: number
  /** That of the quiz, too; the newest where none is named. */
  readonly overlayRevision?: number
  readonly tariffCode?: string | undefined
  readonly emissionFactorCode?: string | undefined
  readonly answers: readonly QuizAnswer[]
}
