import { isExact } from '../quantity/distribution.ts'
import type { DevicePair, ModeAtVisit, ModePair } from './matchDevices.ts'
import { isRead } from './pairPowers.ts'
import type { DeviceVerification } from './verification.ts'

const HOURS_IN_A_WEEK = 168

/**
 * Which option of retrofit isolation a device's saving follows. The key parameter is the power.
 *
 * - A: the power was read at both visits, or at the one that the device was there; hours are as the household stated them
 * - B: nothing was left to estimate: real power was read at both visits, and the mode lasts all hours of the week
 * - none: the power was not read at both, so that the saving is an estimate
 *
 * Source: IPMVP, options A and B (sources.ts); that a mode of 168 hours a week needs no measured hours is the service's
 * own reading of it.
 */
export function ipmvpOption({ before, after, modes }: DevicePair): DeviceVerification['ipmvp'] {
  if (!before || !after)
    return modes.every((mode) => isRead((mode.before ?? mode.after)!)) ? ONE_VISIT : NOT_READ
  if (modes.every(isComplete)) return COMPLETE
  return modes.every(isReadTwice) ? READ_TWICE : NOT_READ
}

const isReadTwice = ({ before, after }: ModePair) =>
  before !== null && after !== null && isRead(before) && isRead(after)

const isComplete = ({ before, after }: ModePair) =>
  before !== null && after !== null && leavesNothing(before) && leavesNothing(after)

const leavesNothing = ({ terms: { confidence, hoursPerWeek } }: ModeAtVisit) =>
  confidence === 'measured' && isExact(hoursPerWeek) && hoursPerWeek.mean === HOURS_IN_A_WEEK

const COMPLETE = {
  option: 'B',
  reason:
    'Real power was read at both visits, and the device is in this mode all hours of the week: nothing was estimated.',
} as const
const READ_TWICE = {
  option: 'A',
  reason: 'The power, the key parameter, was read at both visits; the hours are as stated.',
} as const
const ONE_VISIT = {
  option: 'A',
  reason:
    'The power, the key parameter, was read at the visit that found the device; at the other it is not there and draws nothing. The hours are as stated.',
} as const
const NOT_READ = {
  option: null,
  reason:
    'The power was not read in every mode at both visits, so this is an estimate and no verification. Read it with a plug-in wattmeter at both visits.',
} as const
