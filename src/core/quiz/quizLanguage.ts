import type { Group, KeepPoweredReason, Mode } from '../catalogue/category.ts'
import type { HoursChoice } from './hoursChoice.ts'
import type { QuizFigure, QuizReadingKind } from './quizReading.ts'

/** Sentences of the quiz that belong to no device. */
export const QUIZ_TEXTS = [
  'introduction',
  'countQuestion',
  'hoursQuestion',
  'yearQuestion',
  'readingQuestion',
  'readingHelp',
  'alwaysOn',
  'sampleData',
  'worthDoing',
  'mustStayOn',
  'readFirst',
  'beforeSwitchingOff',
] as const
export type QuizText = (typeof QUIZ_TEXTS)[number]

interface Explained {
  readonly label: string
  readonly help: string
}

/** All words of the quiz in one language; a file of seed/languages. */
export interface QuizLanguage {
  /** BCP 47 tag, such as de or pt-BR. */
  readonly language: string
  /** What the language calls itself. */
  readonly name: string
  readonly texts: Readonly<Record<QuizText, string>>
  readonly groups: Readonly<Record<Group, string>>
  /** `help` is for categories that have none of their own; `advice` is what can be done about a device in the mode. */
  readonly modes: Readonly<Record<Mode, Explained & { readonly advice: string }>>
  readonly hours: Readonly<Record<HoursChoice, Explained>>
  readonly keepPowered: Readonly<Record<KeepPoweredReason, string>>
  readonly readings: Readonly<Record<QuizReadingKind, Explained>>
  readonly figures: Readonly<Record<QuizFigure, string>>
  /** By code. A category without an entry is asked for by its name in the catalogue. */
  readonly categories: Readonly<
    Record<string, { readonly label: string; readonly help?: string | undefined }>
  >
}

/** The languages that the service has. */
export interface QuizLanguages {
  /** By their tags. */
  readonly known: ReadonlyMap<string, QuizLanguage>
  /** The language of the catalogue's names and notes, and of answers to whoever accepts none of the others. */
  readonly catalogueLanguage: string
  /** Changes with any word of any of them, so that a kept quiz is not taken for a fresh one. */
  readonly fingerprint: string
}

/** The language to speak, and that of the catalogue behind it. */
export interface Words {
  readonly spoken: QuizLanguage
  readonly catalogueLanguage: string
}
