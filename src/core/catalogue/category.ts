/**
 * What the catalogue knows of a kind of device. Plain data, no behaviour.
 *
 * Mode names are those of IEC 62301 and the EU ecodesign regulations
 * ((EC) 1275/2008, (EU) 2023/826, (EU) 2019/1782 for `no-load`).
 */
export const MODES = ['off', 'standby', 'networked-standby', 'idle', 'no-load'] as const
export type Mode = (typeof MODES)[number]

export const GROUPS = [
  'video',
  'audio',
  'computing',
  'networking',
  'kitchen',
  'laundry',
  'comfort',
  'charging',
  'lighting-and-smart-home',
  'security-and-care',
  'hobby-and-garden',
] as const
export type Group = (typeof GROUPS)[number]

/** Why a device must stay powered. Such a device is never part of a savings plan. */
export const KEEP_POWERED_REASONS = [
  'medical',
  'refrigeration',
  'alarm-and-life-safety',
  'network-for-others',
  'frost-protection',
  'scheduled-recording',
] as const
export type KeepPoweredReason = (typeof KEEP_POWERED_REASONS)[number]

/** Where a catalogue figure comes from: invented, published (with citation) or from a programme's readings (with n). */
export const PROVENANCE_KINDS = ['sample', 'published', 'programme'] as const

export interface Provenance {
  readonly kind: (typeof PROVENANCE_KINDS)[number]
  readonly citation: string | null
  readonly n: number | null
}

/** Low, typical and high: for a draw the 5th, 50th and 95th percentile over devices in use. */
export interface TypicalDraw {
  /** First and last year of manufacture that the figure speaks of; null means open. */
  readonly yearFrom: number | null
  readonly yearTo: number | null
  readonly lowW: number
  readonly typicalW: number
  readonly highW: number
  readonly provenance: Provenance
}

export interface CategoryMode {
  readonly mode: Mode
  readonly defaultHoursPerWeek: number
  readonly draws: readonly TypicalDraw[]
}

/** Bounds and most likely value of a quantity that is known only as a range. */
export interface Range {
  readonly low: number
  readonly typical: number
  readonly high: number
}

export interface Category {
  /** Stable name in kebab-case. */
  readonly code: string
  readonly name: string
  readonly group: Group
  readonly aliases: readonly string[]
  readonly defaultQuantity: number
  readonly retired: boolean
  readonly keepPowered: { readonly reason: KeepPoweredReason; readonly note: string } | null
  readonly powerFactor: Range
  readonly modes: readonly CategoryMode[]
}
