import { describe, expect, test } from 'vitest'
import { FaultyInput } from '../../src/core/fault.ts'
import { readBaseLoadCsv } from '../../src/schemas/baseLoadCsv.ts'
import { bytesOf } from './espiText.ts'

const read = (text: string, timeZone?: string, size?: number) =>
  readBaseLoadCsv(bytesOf(text, size), timeZone)
const at = (text: string) => Date.parse(text) / 1000
async function rows(text: string, timeZone?: string) {
  const { readings } = await read(text, timeZone)
  return Array.from(readings.startSeconds, (start, i) => [
    start,
    readings.durationSeconds[i],
    readings.watts[i],
  ])
}
async function faults(text: string, timeZone?: string): Promise<string[]> {
  try {
    await read(text, timeZone)
  } catch (error) {
    if (error instanceof FaultyInput) return error.faults.map(({ pointer, code }) => `${pointer} ${code}`)
    throw error
  }
  return []
}

const MIDNIGHT = at('2025-01-06T00:00:00+01:00')

describe('columns', () => {
  test.each([
    ['wattHours', '273', 1092],
    ['kilowattHours', '0.273', 1092],
    ['Energy (kWh)', '0.273', 1092],
    ['use [Wh]', '273', 1092],
    ['watts', '273', 273],
    ['Power (kW)', '0.273', 273],
    ['W', '273', 273],
  ])('%s of %s are %d W over a quarter of an hour', async (name, value, expected) => {
    const text = `start,end,${name}\n2025-01-06T00:00:00+01:00,2025-01-06T00:15:00+01:00,${value}\n`
    expect(await rows(text)).toEqual([[MIDNIGHT, 900, expected]])
  })

  test('length comes from end, from durationSeconds, or from the usual step, and that is told', async () => {
    const both = 'start,durationSeconds,Wh\n2025-01-06T00:00:00+01:00,1800,100\n'
    expect(await rows(both)).toEqual([[MIDNIGHT, 1800, 200]])
    const steps =
      'start,Wh\n2025-01-06T00:00+01:00,100\n2025-01-06T00:30+01:00,100\n2025-01-06T03:00+01:00,100\n2025-01-06T03:30+01:00,100\n'
    const data = await read(steps)
    expect([...data.readings.durationSeconds]).toEqual([1800, 1800, 1800, 1800])
    expect(data.notes.map(({ code }) => code)).toEqual(['interval-inferred'])
  })

  test('a file that names only the ends has its starts before them', async () => {
    const text = 'end,durationSeconds,Wh\n2025-01-06T00:15+01:00,900,100\n'
    expect(await rows(text)).toEqual([[MIDNIGHT, 900, 400]])
  })

  test('semicolons go with decimal commas, quotes and a byte order mark are understood, an empty value is a gap', async () => {
    const text =
      '\uFEFFStart;End;"Energy (kWh)"\r\n2025-01-06T00:00+01:00;2025-01-06T01:00+01:00;"0,25"\r\n2025-01-06T01:00+01:00;2025-01-06T02:00+01:00;\r\n\r\n'
    expect(await rows(text)).toEqual([[MIDNIGHT, 3600, 250]])
  })

  test('what is fed in is not use, but tells of generation', async () => {
    const text = (fedIn: string) =>
      `start,end,kWh,exported kWh\n2025-01-06T00:00+01:00,2025-01-06T01:00+01:00,0.25,${fedIn}\n`
    const data = await read(text('0.1').replace('exported kWh', 'exported (kWh)'))
    expect([[...data.readings.watts], data.exported]).toEqual([[250], true])
    expect((await read(text('0'))).exported).toBe(false)
  })

  test.each([
    ['', '/lines/1 empty-file'],
    ['start\n', '/lines/1 missing-column'],
    ['wattHours\n', '/lines/1 missing-column'],
    ['start,end,Wh,kWh\n', '/lines/1 repeated-column'],
    ['start,end,kWh,account\n', '/lines/1 unknown-column'],
    ['start,end,kWh,exported (Wh)\n', '/lines/1 mixed-units'],
  ])('the header %j is refused', async (header, fault) => {
    expect(await faults(header)).toEqual([fault])
  })
})

describe('times', () => {
  const local = (...times: readonly string[]) =>
    `start,durationSeconds,Wh\n${times.map((time) => `${time},1800,1\n`).join('')}`

  test('local times of the hour that autumn repeats follow each other, forwards and backwards', async () => {
    const times = [
      '2024-10-27 01:30',
      '2024-10-27 02:00',
      '2024-10-27 02:30',
      '2024-10-27 02:00',
      '2024-10-27 02:30',
      '2024-10-27 03:00',
    ]
    const starts = (await rows(local(...times), 'Europe/Berlin')).map(([start]) => start!)
    expect(starts.map((start) => start - starts[0]!)).toEqual([0, 1800, 3600, 5400, 7200, 9000])
    const back = (await rows(local(...times.toReversed()), 'Europe/Berlin')).map(([start]) => start!)
    expect(back).toEqual(starts.toReversed())
  })

  test('a local time that spring leaves out is refused by line', async () => {
    expect(await faults(local('2024-03-31 01:30', '2024-03-31 02:30'), 'Europe/Berlin')).toEqual([
      '/lines/3 time-left-out',
    ])
  })

  test('a local time without a time zone is refused, and so is one in UTC alone', async () => {
    expect(await faults(local('2024-03-31 01:30'))).toEqual(['/lines/2 no-time-zone'])
    expect(await faults(local('2024-03-31T01:30Z'))).toEqual(['/lines/2 no-time-zone'])
  })

  test('offsets tell the local clock where no time zone is named', async () => {
    const { clock } = await read(local('2024-10-27T02:30+02:00', '2024-10-27T02:00+01:00'))
    expect([clock.offsetAt(at('2024-10-27T00:30Z')), clock.offsetAt(at('2024-10-27T01:00Z'))]).toEqual([
      7200, 3600,
    ])
  })

  test.each(['30/03/2025 01:00', '2025-02-30 01:00', '2025-03-01 25:00', 'yesterday', '1741651200'])(
    '%s is no time',
    async (time) => {
      expect(await faults(local(time), 'Europe/Berlin')).toEqual(['/lines/2 invalid-time'])
    },
  )

  test('24:00 is the end of the day', async () => {
    expect((await rows(local('2025-01-05 24:00'), 'Europe/Berlin'))[0]![0]).toBe(MIDNIGHT)
  })
})

describe('faults', () => {
  test('are named by line, all at once', async () => {
    const text =
      'start,end,kWh\n2025-01-06T00:00+01:00,2025-01-06T01:00+01:00,a lot\nx,2025-01-06T02:00+01:00,1\n1,2\n2025-01-06T03:00+01:00,2025-01-06T03:00+01:00,1\n2025-01-06T04:00+01:00,2025-01-06T05:00+01:00,"0,5"\n2025-01-06T04:00+01:00,2025-01-06T05:00+01:00,"5\n'
    expect(await faults(text)).toEqual([
      '/lines/2 invalid-number',
      '/lines/3 invalid-time',
      '/lines/4 wrong-cell-count',
      '/lines/5 invalid-duration',
      '/lines/6 invalid-number',
      '/lines/7 unreadable-line',
    ])
  })

  test('end at a hundred', async () => {
    expect((await faults(`start,end,kWh\n${'x,y,z\n'.repeat(400)}`)).length).toBe(101)
  })

  test('a line without end is refused', async () => {
    expect(await faults(`start,end,kWh\n${'1'.repeat(50_000)}`)).toEqual(['/lines/2 line-too-long'])
  })
})

test('how the bytes are cut into pieces changes nothing', async () => {
  const text =
    'start,end,kWh\r\n2025-01-06T00:00+01:00,2025-01-06T01:00+01:00,0.25\r\n2025-01-06T01:00+01:00,2025-01-06T02:00+01:00,0.5\r\n'
  const whole = await read(text, undefined, 100_000)
  for (const size of [1, 2, 3, 16])
    expect((await read(text, undefined, size)).readings).toEqual(whole.readings)
})
