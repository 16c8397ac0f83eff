import { drawSum } from '../catalogue/drawSums.ts'
import { isExact } from '../quantity/distribution.ts'
import { type Interval, intervalOfSum, scaleInterval } from '../quantity/intervalOfSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { scaleTerm } from '../quantity/term.ts'
import { deviceFlag } from './confidence.ts'
import type { DeviceEstimate, ModeEstimate, Warning } from './estimate.ts'
import type { ModeTerms } from './estimateMode.ts'

/** What is said of a device whatever its name, the price and the grid. */
export interface DeviceFigures extends Pick<
  DeviceEstimate,
  'confidence' | 'sampleData' | 'powerW' | 'energyKwhPerYear' | 'modes' | 'warnings'
> {
  /** kWh/yr, not rounded. */
  readonly energy: Interval
}

/** Figures of one device, from the terms of its modes. */
export function deviceFigures(
  modes: readonly ModeTerms[],
  quantity: number,
  coverage: number,
  weeksPerYear: number,
): DeviceFigures {
  const intervals = modes.map((mode) => modeIntervals(mode, coverage, weeksPerYear))
  const energy = modes.length === 1 ? intervals[0]!.energy : energyOf(modes, quantity, coverage, weeksPerYear)
  const power = averagePower(modes, intervals, energy, coverage, weeksPerYear)
  const estimates = modes.map((mode, i) => estimateMode(mode, intervals[i]!, coverage, weeksPerYear))
  return {
    energy,
    confidence: deviceFlag(
      estimates.map(({ confidence, energyKwhPerYear }) => ({
        confidence,
        expectedKwh: energyKwhPerYear.expected,
      })),
    ),
    sampleData: modes.some(({ sampleData }) => sampleData),
    powerW: significantInterval(power),
    energyKwhPerYear: significantInterval(energy),
    modes: estimates,
    warnings:
      modes.length === 1 ? modes[0]!.warnings : withoutRepeats(modes.flatMap(({ warnings }) => warnings)),
  }
}

/** The sum over modes; kept with the catalogue where all are typical draws at plain hours, and nothing is to be drawn. */
function energyOf(
  modes: readonly ModeTerms[],
  quantity: number,
  coverage: number,
  weeksPerYear: number,
): Interval {
  const sum = () =>
    intervalOfSum(
      modes.map((mode) => mode.energy),
      coverage,
    )
  const draws = modes.flatMap(({ draw, energy, hoursPerWeek, hoursFrom }) =>
    draw && !energy.drawn && (hoursFrom === 'catalogue' || Number.isInteger(hoursPerWeek.max)) ? [draw] : [],
  )
  if (draws.length < modes.length) return sum()
  return drawSum(
    draws,
    [quantity, coverage, weeksPerYear, ...modes.map(({ hoursPerWeek }) => hoursPerWeek.mean)],
    sum,
  )
}

interface ModeIntervals {
  readonly power: Interval
  readonly energy: Interval
}

/** With exact hours the energy is the power on another scale; only uncertain hours make it a quantity of its own. */
function modeIntervals(
  { power, energy, hoursPerWeek }: ModeTerms,
  coverage: number,
  weeksPerYear: number,
): ModeIntervals {
  const watts = intervalOfSum([power], coverage)
  const kwh = isExact(hoursPerWeek)
    ? scaleInterval(watts, (hoursPerWeek.mean * weeksPerYear) / 1000)
    : intervalOfSum([energy], coverage)
  return { power: watts, energy: kwh }
}

function estimateMode(
  mode: ModeTerms,
  { power, energy }: ModeIntervals,
  coverage: number,
  weeksPerYear: number,
): ModeEstimate {
  const { apparentPower } = mode
  return {
    mode: mode.mode,
    hoursPerYear: significant(mode.hoursPerWeek.mean * weeksPerYear),
    hoursFrom: mode.hoursFrom,
    confidence: mode.confidence,
    origin: mode.origin,
    powerW: significantInterval(power),
    ...(apparentPower && { apparentPowerVa: significantInterval(intervalOfSum([apparentPower], coverage)) }),
    energyKwhPerYear: significantInterval(energy),
  }
}

const NO_POWER: Interval = { expected: 0, low: 0, high: 0 }

/**
 * The average power over the hours counted, each mode weighted by its expected hours; how uncertain the hours are
 * shows in the energy. With no hours at all there is nothing to average, and it is 0 W.
 */
function averagePower(
  modes: readonly ModeTerms[],
  intervals: readonly ModeIntervals[],
  energy: Interval,
  coverage: number,
  weeksPerYear: number,
): Interval {
  const hours = modes.reduce((sum, { hoursPerWeek }) => sum + hoursPerWeek.mean, 0)
  if (hours === 0) return NO_POWER
  if (modes.length === 1) return intervals[0]!.power
  if (modes.every(({ hoursPerWeek }) => isExact(hoursPerWeek)))
    return scaleInterval(energy, 1000 / (hours * weeksPerYear))
  const terms = modes.map(({ power, hoursPerWeek }) => scaleTerm(power, hoursPerWeek.mean / hours))
  return intervalOfSum(terms, coverage)
}

const withoutRepeats = (warnings: readonly Warning[]): readonly Warning[] =>
  warnings.filter(
    (warning, index) => warnings.findIndex(({ message }) => message === warning.message) === index,
  )
