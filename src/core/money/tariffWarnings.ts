import type { Tariff } from './tariff.ts'
import { tariffHolds } from './tariffHolds.ts'

/**
 * What is said of the tariff that was chosen: that the operator has retired it, and that it does not hold on the day that
 * the caller names. It is used all the same, so that old estimates can be made again.
 */
export function tariffWarnings(
  tariff: Tariff,
  retiredCode: string | null,
  day: string | undefined,
): { readonly code: string; readonly message: string }[] {
  const warnings = []
  if (retiredCode !== null)
    warnings.push({
      code: 'tariff-retired',
      message: `The tariff ${retiredCode} was retired: it is no longer offered. Take another one unless this is an old estimate.`,
    })
  if (day !== undefined && !tariffHolds(tariff, day))
    warnings.push({
      code: 'tariff-not-in-force',
      message: `The tariff holds ${span(tariff)}, and so not on ${day}; take one that does.`,
    })
  return warnings
}

const span = ({ validFrom, validTo }: Tariff): string =>
  [validFrom && `from ${validFrom}`, validTo && `up to ${validTo}`].filter(Boolean).join(' ')
