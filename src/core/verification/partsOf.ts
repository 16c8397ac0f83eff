import { intervalOfDifference } from '../quantity/intervalOfDifference.ts'
import { significantInterval } from '../quantity/significant.ts'
import type { DeviceContrasts } from './deviceContrasts.ts'
import type { SavingParts } from './verification.ts'

/** What of a saving is another power, and what other hours. */
export function partsOf(devices: readonly DeviceContrasts[], coverage: number): SavingParts {
  const of = (part: 'powerEffect' | 'hoursEffect') =>
    significantInterval(
      intervalOfDifference(
        devices.flatMap((device) => device[part]),
        coverage,
      ),
    )
  return { powerEffect: of('powerEffect'), hoursEffect: of('hoursEffect') }
}
