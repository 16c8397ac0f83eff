import type { Part } from './part.ts'

/** Why a measure that could be meant for some devices is not offered for them. */
export const REFUSAL_CODES = [
  'over-rated-load',
  'too-few-outlets',
  'strip-behind-strip',
  'needs-fixed-outlet',
  'mode-unknown',
  'saves-nothing',
  'price-in-other-currency',
] as const
export type RefusalCode = (typeof REFUSAL_CODES)[number]

export interface Refusal {
  readonly measureCode: string
  readonly deviceIds: readonly string[]
  readonly outlet: string | null
  readonly code: RefusalCode
  readonly message: string
}

/** What a measure comes to at one place. */
export type Offer = { readonly part: Part } | { readonly refusal: Refusal }
