import type { IntervalData } from '../core/baseLoad/intervalData.ts'
import { ReadingColumns, wattsOfEnergy } from '../core/baseLoad/readingColumns.ts'
import { FaultyInput } from '../core/fault.ts'
import type { BlockInput } from './baseLoad.ts'
import { TimeReader } from './baseLoadClock.ts'
import { readTimestamp } from './baseLoadTime.ts'

const [ENERGY, POWER] = [0, 1]

/**
 * Interval data of the JSON form.
 * @throws FaultyInput where the starts do not tell the home's local time
 */
export function readBlocks(blocks: readonly BlockInput[], timeZone: string | undefined): IntervalData {
  const times = new TimeReader(timeZone)
  const columns = new ReadingColumns()
  let place = 0
  blocks.forEach((block, index) => {
    const start = times.read(readTimestamp(block.start)!)
    if (typeof start === 'string') throw new FaultyInput([noTimeZone(index, block.start)])
    const channel = block.wattHours ? ENERGY : POWER
    ;(block.wattHours ?? block.watts ?? []).forEach((value, i) => {
      place++
      if (value !== null)
        columns.push(start + i * block.intervalSeconds, block.intervalSeconds, value, place, channel)
    })
  })
  return {
    form: 'json',
    readings: columns.toReadings(
      (value, seconds, channel) => (channel === ENERGY ? wattsOfEnergy(value, seconds) : value),
      () => 0,
    ),
    clock: times.clock(),
    exported: false,
    estimated: 0,
    notes: [],
  }
}

const noTimeZone = (index: number, start: string) => ({
  pointer: `/blocks/${index}/start`,
  code: 'no-time-zone',
  message: `${JSON.stringify(start)} does not tell the home’s local time; name the home’s timeZone, such as Europe/Berlin.`,
})
