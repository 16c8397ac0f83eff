import type { Range } from '../catalogue/category.ts'
import type { Flag, Warning } from '../estimate/estimate.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { exact } from '../quantity/exact.ts'
import { triangular } from '../quantity/triangular.ts'

export interface KnownPowerFactor {
  readonly distribution: Distribution
  /** Its bounds; all three the same where it was read. */
  readonly range: Range
  readonly from: 'reading' | 'stated-range' | 'usual-range'
  readonly flag: Flag
  readonly words: string
  readonly warnings: readonly Warning[]
}

/**
 * The power factor that turns VA into W: read (a number), given as a range, or, where unknown, the category's range.
 * A range is triangular on its bounds. Only a power factor that was read leaves the power measured.
 */
export function powerFactorOf(given: number | Range | undefined, usual: Range): KnownPowerFactor {
  if (typeof given === 'number')
    return {
      distribution: exact(given),
      range: { low: given, typical: given, high: given },
      from: 'reading',
      flag: 'measured',
      words: `PF ${given} as read`,
      warnings: tooGood(given, usual),
    }
  const range = given ?? usual
  return {
    distribution: triangular(range),
    range,
    from: given ? 'stated-range' : 'usual-range',
    flag: 'partly-measured',
    words: `PF between ${range.low} and ${range.high}${given ? ' as stated' : ', the category’s range'}`,
    warnings: given ? [] : [ASSUMED],
  }
}

const ASSUMED: Warning = {
  code: 'power-factor-assumed',
  message:
    'Volts times amperes is apparent power (VA), not watts: without a power factor the reading gives a range of watts, never one figure. Read it again with a plug-in wattmeter, or read the power factor too.',
}

function tooGood(given: number, usual: Range): Warning[] {
  if (given <= usual.high) return []
  const message = `A power factor of ${given} is above the ${usual.low} to ${usual.high} usual for this category in a low-power mode. If it was not read but set to 1, leave it out: taking VA for W makes the figure too high.`
  return [{ code: 'power-factor-unusual', message }]
}
