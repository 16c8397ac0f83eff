import { DEVICE_FLAGS, type Flag, type TotalEstimate } from './estimate.ts'

const rank = (flag: Flag) => DEVICE_FLAGS.indexOf(flag)

/** The weakest flag among the modes that make up a device's energy; among all its modes where it has no energy. */
export function deviceFlag(
  modes: readonly { readonly confidence: Flag; readonly expectedKwh: number }[],
): Flag {
  const counted = modes.filter(({ expectedKwh }) => expectedKwh > 0)
  const flags = (counted.length > 0 ? counted : modes).map(({ confidence }) => confidence)
  return flags.reduce((weakest, flag) => (rank(flag) > rank(weakest) ? flag : weakest))
}

/** The share of the expected energy that each flag stands for; all zero where there is no energy. */
export function confidenceShares(
  modes: readonly { readonly confidence: Flag; readonly expectedKwh: number }[],
): Record<Flag, number> {
  const total = modes.reduce((sum, { expectedKwh }) => sum + expectedKwh, 0)
  const shares = { measured: 0, 'partly-measured': 0, declared: 0, assumed: 0 }
  if (total > 0) for (const { confidence, expectedKwh } of modes) shares[confidence] += expectedKwh / total
  return shares
}

const NEARLY_ALL = 0.9 - 1e-12

/** `measured` or `assumed` where at least 90 % of the energy is, otherwise `mixed` (DESIGN section 4). */
export function totalConfidence(shares: Readonly<Record<Flag, number>>): TotalEstimate['confidence'] {
  if (shares.measured >= NEARLY_ALL) return 'measured'
  return shares.assumed >= NEARLY_ALL ? 'assumed' : 'mixed'
}
