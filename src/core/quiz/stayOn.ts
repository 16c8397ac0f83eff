import type { Category, KeepPoweredReason } from '../catalogue/category.ts'
import type { Words } from './quizLanguage.ts'

/** That a device must stay powered, and why, for people. */
export interface StayOn {
  readonly reason: KeepPoweredReason
  readonly reasonText: string
  /** What could happen otherwise, as the catalogue says it. */
  readonly note: string
  readonly noteLanguage: string
}

export const stayOn = (
  { reason, note }: NonNullable<Category['keepPowered']>,
  { spoken, catalogueLanguage }: Words,
): StayOn => ({ reason, reasonText: spoken.keepPowered[reason], note, noteLanguage: catalogueLanguage })
