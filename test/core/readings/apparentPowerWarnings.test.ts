import { expect, test } from 'vitest'
import { powerOfApparentPower } from '../../../src/core/readings/powerOfApparentPower.ts'
import type { ApparentPowerReading } from '../../../src/core/readings/reading.ts'
import { codesOf, contextOf, EXACT } from './contextOf.ts'

const warned = (more: Partial<ApparentPowerReading>) =>
  codesOf(powerOfApparentPower({ kind: 'apparent-power', voltAmperes: 5, ...more }, contextOf()).warnings)

test('an apparent power keeps what is to be said of its meter and of its power factor, in that order', () => {
  expect(warned({})).toEqual(['accuracy-unknown', 'power-factor-assumed'])
  expect(warned({ accuracy: EXACT })).toEqual(['power-factor-assumed'])
  expect(warned({ powerFactor: 1 })).toEqual(['accuracy-unknown', 'power-factor-unusual'])
  expect(warned({ accuracy: EXACT, powerFactor: 0.4 })).toEqual([])
})
