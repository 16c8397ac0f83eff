import type { Warning } from '../../estimate/estimate.ts'
import { SMALLEST_W } from '../../quantity/twoPieceLognormal.ts'
import type { Reading } from '../reading.ts'
import { shown } from '../shown.ts'
import type { UsualDraw } from '../usualDraw.ts'

/** How far outside of the usual range is far: that many times below its low or above its high. */
const FAR = 10
/** A slip explains a reading that comes to lie within the usual range, give or take this factor, once it is undone. */
const NEAR = 2

/** A mistake that moves a reading by a known factor. */
interface Slip {
  readonly code: string
  /** What undoes it. */
  readonly factor: number
  readonly message: string
}

/**
 * Holds a reading against what such a device usually draws. Far outside, the slip that explains it is named where there
 * is one. A splitter's window that was forgotten, or counted twice, moves a reading by its turns only, so it is
 * looked for from a factor of 2 outside of the range on.
 */
export function againstUsualDraw(reading: Reading, watts: number, usual: UsualDraw): Warning[] {
  const low = Math.max(usual.low, SMALLEST_W)
  const high = Math.max(usual.high, SMALLEST_W)
  const within = (value: number, slack: number) => value >= low / slack && value <= high * slack
  if (within(watts, NEAR)) return []
  const said = `The reading comes to ${shown(watts)} W, but ${usual.name} usually draws ${shown(usual.low)} to ${shown(usual.high)} W here.`
  const turns = turnsSlip(reading, watts > high)
  if (turns && within(watts * turns.factor, 1)) return [worded(turns, said)]
  if (within(watts, FAR)) return []
  const unit = unitSlips(reading).find(({ factor }) => within(watts * factor, NEAR))
  if (unit) return [worded(unit, said)]
  return [worded(reading.kind === 'current' && watts < low ? BOTH_CONDUCTORS : outside(reading), said)]
}

const worded = ({ code, message }: Omit<Slip, 'factor'>, said: string): Warning => ({
  code,
  message: `${said} ${message}`,
})

/** Turns of a line splitter's usual window. */
const WINDOW_TURNS = 10

function turnsSlip(reading: Reading, isHigh: boolean): Slip | null {
  if (reading.kind !== 'current') return null
  const loops = reading.loops ?? 1
  if (isHigh && loops === 1)
    return {
      code: 'loops-forgotten',
      factor: 1 / WINDOW_TURNS,
      message: `A tenth of it would fit. If the clamp was round the x10 window of a line splitter, give loops: ${WINDOW_TURNS}.`,
    }
  if (!isHigh && loops > 1)
    return {
      code: 'loops-applied-twice',
      factor: loops,
      message: `${loops} times as much would fit. Give amperes as the meter showed them: they are divided by loops (${loops}) here, so do not divide them before.`,
    }
  return null
}

function unitSlips(reading: Reading): Slip[] {
  const slip = (code: string, factor: number, shows: string, typed: string, value: number) => ({
    code,
    factor,
    message: `If the meter showed ${shows} and not ${typed}, give ${shown(value * factor)} ${typed} in place of ${value}.`,
  })
  switch (reading.kind) {
    case 'current':
      return [slip('milliamperes-as-amperes', 1e-3, 'mA', 'A', reading.amperes)]
    case 'apparent-power':
      return [
        slip('kilovolt-amperes-as-volt-amperes', 1e3, 'kVA', 'VA', reading.voltAmperes),
        slip('millivolt-amperes-as-volt-amperes', 1e-3, 'mVA', 'VA', reading.voltAmperes),
      ]
    case 'energy':
      return [slip('kilowatt-hours-as-watt-hours', 1e3, 'kWh', 'Wh', reading.wattHours)]
    case 'power':
    case 'declared':
      return [
        slip('kilowatts-as-watts', 1e3, 'kW', 'W', reading.watts),
        slip('milliwatts-as-watts', 1e-3, 'mW', 'W', reading.watts),
      ]
    case 'samples':
      return [
        slip('kilowatts-as-watts', 1e3, 'kW', 'W', reading.watts[0]!),
        slip('milliwatts-as-watts', 1e-3, 'mW', 'W', reading.watts[0]!),
      ]
    case 'thermal':
      return []
  }
}

const BOTH_CONDUCTORS = {
  code: 'both-conductors-in-jaw',
  message:
    'Nearly nothing is what a clamp shows with both conductors in its jaw, since their fields cancel. Put one conductor alone through it, by way of a line splitter, or read with a plug-in wattmeter.',
}

const HINTS: Readonly<Record<Reading['kind'], string>> = {
  power: 'Check the unit, the mode that the device was in, and that it was the only one on the meter.',
  energy: 'Check the units of energy and time, and that the device stayed in one mode.',
  samples: 'Check the unit, and that the device was in the mode that is given.',
  current:
    'Check the unit, the splitter’s window, and that only this device’s conductor went through the clamp.',
  'apparent-power': 'Check that it is VA, and the mode that the device was in.',
  declared:
    'A label often states the most that a device takes in use, not what it draws in this mode; look for the mode’s own figure in the data sheet.',
  thermal: 'Check the area and the temperatures; a surface that others warm, too, says little.',
}

const outside = ({ kind }: Reading) => ({
  code: 'outside-usual-range',
  message: `That is more than ${FAR} times off. ${HINTS[kind]}`,
})
