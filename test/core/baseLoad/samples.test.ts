import { createReadStream, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { evaluateBaseLoad } from '../../../src/core/baseLoad/evaluateBaseLoad.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { readBaseLoadCsv } from '../../../src/schemas/baseLoadCsv.ts'
import { readEspi } from '../../../src/schemas/espiReader.ts'

/*
 * The sample files, and their figures worked out a second time, the way one would in a spreadsheet: the text is taken
 * apart with a regular expression, each instant gets its local hour from the runtime's calendar, and each figure is a
 * plain loop.
 */
const seed = await readSeed()
const settings = settingsOf(readConfig({}), seed)
const catalogue = catalogueOf(1, seed.categories)
const file = (name: string) => new URL(`samples/${name}`, import.meta.url)

interface Cell {
  readonly start: number
  readonly date: string
  readonly hour: number
  readonly watts: number
}

function localCell(start: number, watts: number, timeZone: string): Cell {
  const parts = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' })
  const [date = '', time = ''] = parts.format(start * 1000).split(' ')
  return { start, date, hour: Number(time.slice(0, 2)), watts }
}

/** The file's readings, each once. */
function cellsOfXml(): Cell[] {
  const text = readFileSync(file('two-weeks-in-spring.xml'), 'utf8')
  const byStart = new Map<number, Cell>()
  for (const [, start, value] of text.matchAll(/<start>(\d+)<\/start><\/timePeriod><value>(\d+)</g))
    byStart.set(Number(start), localCell(Number(start), Number(value) / 10, 'America/Chicago'))
  return [...byStart.values()].sort((a, b) => a.start - b.start)
}

/** Half hours follow each other without a break, so the first start tells all others, also in the hour that comes twice. */
function cellsOfCsv(): Cell[] {
  const lines = readFileSync(file('ten-days-in-autumn.csv'), 'utf8').trim().split('\n').slice(1)
  const first = Date.parse('2024-10-20T22:00:00Z') / 1000
  return lines.map((line, i) =>
    localCell(first + i * 1800, Number(line.split(';')[1]!.replace(',', '.')) * 2000, 'Europe/Berlin'),
  )
}

function byHand(cells: readonly Cell[], fullDay: (date: string) => number) {
  const sorted = cells.map(({ watts }) => watts).sort((a, b) => a - b)
  const at = (share: number) => {
    const place = share * (sorted.length - 1)
    const low = sorted[Math.floor(place)]!
    return low + (sorted[Math.ceil(place)]! - low) * (place % 1)
  }
  const days: Record<string, number[]> = {}
  const night: number[] = []
  for (const { date, hour, watts } of cells) {
    days[date] = [...(days[date] ?? []), watts]
    if ([1, 2, 3, 4].includes(hour)) night.push(watts)
  }
  const minima = Object.entries(days)
    .filter(([date, values]) => values.length >= 0.9 * fullDay(date))
    .map(([, values]) => Math.min(...values))
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  return {
    minima: mean(minima),
    days: minima.length,
    p5: at(0.05),
    p10: at(0.1),
    night: mean(night),
    all: mean(sorted),
    least: sorted[0]!,
    count: sorted.length,
  }
}

function figuresOf({ estimators, data, chosen }: ReturnType<typeof evaluateBaseLoad>) {
  const [, minima, p5, p10, night] = estimators.map(({ powerW }) => powerW!)
  return {
    minima: minima!,
    days: chosen.days,
    p5: p5!,
    p10: p10!,
    night: night!,
    all: data.meanW,
    least: data.leastReadingW,
    count: data.readings,
  }
}

function expectSame(one: object, other: object): void {
  for (const [name, value] of Object.entries(one))
    expect([name, (other as Record<string, number>)[name]]).toEqual([
      name,
      expect.closeTo(value as number, 2),
    ])
}

describe('two weeks in spring, ESPI', async () => {
  const data = await readEspi(createReadStream(file('two-weeks-in-spring.xml')))
  const answer = evaluateBaseLoad(data, {}, catalogue, settings)

  test('every estimator is what a plain loop over the file gives', () => {
    expectSame(
      byHand(cellsOfXml(), (date) => (date === '2024-03-10' ? 23 : 24)),
      figuresOf(answer),
    )
  })

  test('the blocks that overlap count once, the missing hours are a gap, and the day of the change has 23 hours', () => {
    expect(answer.data).toMatchObject({
      days: 14,
      completeDays: 13,
      duplicates: 24,
      conflicts: 0,
      gaps: 1,
      longestGapHours: 5,
      clockChanges: [{ date: '2024-03-10', hours: 23 }],
    })
  })
})

describe('ten days in autumn, CSV', async () => {
  const data = await readBaseLoadCsv(createReadStream(file('ten-days-in-autumn.csv')), 'Europe/Berlin')
  const answer = evaluateBaseLoad(data, {}, catalogue, settings)

  test('every estimator is what a plain loop over the file gives', () => {
    expectSame(
      byHand(cellsOfCsv(), (date) => (date === '2024-10-27' ? 50 : 48)),
      figuresOf(answer),
    )
  })

  test('no reading is lost or doubled in the hour that comes twice, and that day has 25 hours', () => {
    expect(answer.data).toMatchObject({
      days: 10,
      completeDays: 10,
      duplicates: 0,
      conflicts: 0,
      gaps: 0,
      clockChanges: [{ date: '2024-10-27', hours: 25 }],
    })
  })
})
