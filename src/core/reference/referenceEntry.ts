import type { NamedEmissionFactor } from '../emissions/emissionFactor.ts'
import type { NamedTariff } from '../money/tariff.ts'

/** What the operator keeps for estimates besides the catalogue, by kind. */
export interface ReferenceContents {
  readonly tariff: NamedTariff
  readonly 'emission-factor': NamedEmissionFactor
}

export const REFERENCE_KINDS = ['tariff', 'emission-factor'] as const
export type ReferenceKind = (typeof REFERENCE_KINDS)[number]

/** One entry and what kind it is of. */
export interface EntryOf<K extends ReferenceKind> {
  readonly kind: K
  readonly content: ReferenceContents[K]
}
export type ReferenceEntry = { readonly [K in ReferenceKind]: EntryOf<K> }[ReferenceKind]

/** The kinds in words, for messages. */
export const KIND_IN_WORDS: Readonly<Record<ReferenceKind, string>> = {
  tariff: 'tariff',
  'emission-factor': 'emission factor',
}
