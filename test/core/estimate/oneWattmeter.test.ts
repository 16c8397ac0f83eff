import { expect, test } from 'vitest'
import { modesOf, modeTerms } from '../../../src/core/estimate/estimateMode.ts'
import { expectedWidths } from '../../../src/core/estimate/expectedWidths.ts'
import { resolveHousehold } from '../../../src/core/estimate/resolveHousehold.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { catalogue, oneDevice } from './households.ts'

const devices = [
  oneDevice({ hoursPerWeek: 168 }, { id: 'first' }),
  oneDevice({ hoursPerWeek: 40 }, { id: 'many', quantity: 9 }),
  oneDevice({ hoursPerWeek: 113 }, { id: 'one' }),
]

test('the next reading is chosen knowing that the wattmeter’s gain is in the readings before it, too', () => {
  const resolved = resolveHousehold({ devices }, catalogue, testSettings)
  const modes = resolved.devices.flatMap((device) =>
    modesOf(device).map((mode) => ({ deviceId: device.id, terms: modeTerms(mode, device, resolved) })),
  )
  const placesOf = (percentOfReading: number) =>
    expectedWidths(modes, 52, { percentOfReading, counts: 0, resolution: 0.01 }, 0.9)[1]!.at.map(
      ({ deviceId }) => deviceId,
    )
  // Nine devices are a little more uncertain than the one, and draw three times as much: the gain counts for more there.
  expect(placesOf(0.1)).toEqual(['first', 'many'])
  expect(placesOf(12)).toEqual(['first', 'one'])
})
