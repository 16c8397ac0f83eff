import { describe, expect, test } from 'vitest'
import { FaultyInput } from '../../src/core/fault.ts'
import { readEspi } from '../../src/schemas/espiReader.ts'
import { block, bytesOf, feed, LOCAL_TIME, meter, reading, READING_TYPE, usagePoint } from './espiText.ts'

const START = 1_330_578_000
const read = (text: string, timeZone?: string, size?: number) => readEspi(bytesOf(text, size), timeZone)
const watts = async (text: string, timeZone?: string) => [...(await read(text, timeZone)).readings.watts]

async function faultsOf(
  text: string,
  timeZone?: string,
): Promise<{ code: string; message: string; pointer: string }[]> {
  try {
    await read(text, timeZone)
  } catch (error) {
    if (error instanceof FaultyInput) return [...error.faults]
    throw error
  }
  return []
}
const codesOf = async (text: string, timeZone?: string) =>
  (await faultsOf(text, timeZone)).map(({ code }) => code)

const one = (...readings: readonly string[]) =>
  feed(usagePoint('0'), LOCAL_TIME, meter('1', 'T/1', READING_TYPE), block('1', ...readings))
const withType = (fields: Readonly<Record<string, string>>) =>
  feed(LOCAL_TIME, meter('1', 'T/1', { ...READING_TYPE, ...fields }), block('1', reading(START, 273)))

describe('what a value means', () => {
  test('273 Wh in 900 s are 1,092 W', async () => {
    expect(await watts(one(reading(START, 273)))).toEqual([1092])
  })

  test.each([
    ['3', '1', 4000],
    ['-1', '2730', 1092],
    ['-3', '273000', 1092],
    ['0', '273', 1092],
  ])('a powerOfTenMultiplier of %s scales %s to %d W', async (powerOfTenMultiplier, value, expected) => {
    const text = feed(
      LOCAL_TIME,
      meter('1', 'T/1', { ...READING_TYPE, powerOfTenMultiplier }),
      block('1', reading(START, value)),
    )
    expect(await watts(text)).toEqual([expected])
  })

  test('a value in W (uom 38) is mean power as it is', async () => {
    expect(await watts(withType({ uom: '38' }))).toEqual([273])
  })

  test('a reading without a duration is as long as its type says', async () => {
    const text = one(
      `<IntervalReading><timePeriod><start>${START}</start></timePeriod><value>273</value></IntervalReading>`,
    )
    expect(await watts(text)).toEqual([1092])
  })

  test('the type may stand behind the intervals, and names may have a prefix', async () => {
    const text = feed(block('1', reading(START, 273)), meter('1', 'T/1', READING_TYPE), LOCAL_TIME)
    expect(await watts(text)).toEqual([1092])
    const prefixed = text
      .replaceAll('xmlns="http://naesb.org/espi"', 'xmlns:e="http://naesb.org/espi"')
      .replace(
        /<(\/?)(MeterReading|ReadingType|Interval\w+|Local\w+|timePeriod|duration|start|value|uom|dst\w+|tz\w+|power\w+|flow\w+|accum\w+)/g,
        '<$1e:$2',
      )
    expect(await watts(prefixed)).toEqual([1092])
  })

  test('elements of another namespace are no readings', async () => {
    const text = one(reading(START, 273)).replaceAll('http://naesb.org/espi', 'http://example.org/other')
    expect(await codesOf(text)).toEqual(['no-readings'])
  })

  test.each([
    ['uom', '73', 'varh, non-active energy'],
    ['uom', '61', 'VA, apparent power'],
    ['accumulationBehaviour', '3', 'export the intervals'],
    ['flowDirection', '20', 'flowDirection is 20'],
    ['dataQualifier', '8', 'highest or lowest'],
    ['powerOfTenMultiplier', 'kilo', 'powerOfTenMultiplier is "kilo"'],
  ])('%s %s is refused with what to do', async (field, value, words) => {
    const [fault, ...others] = await faultsOf(withType({ [field]: value }))
    expect([fault!.code, others]).toEqual(['no-usable-readings', []])
    expect(fault!.message).toContain(words)
    expect(fault!.message).toContain('Export the energy of each interval in Wh')
  })

  test('gas is not electricity, though its unit be energy', async () => {
    const text = feed(
      usagePoint('1'),
      LOCAL_TIME,
      meter('1', 'T/1', READING_TYPE),
      block('1', reading(START, 273)),
    )
    expect((await faultsOf(text))[0]!.message).toContain('service kind 1 is not electricity')
  })
})

describe('several channels', () => {
  const two = (fields: Readonly<Record<string, string>>, value: number) =>
    feed(
      LOCAL_TIME,
      meter('1', 'T/1', READING_TYPE),
      meter('2', 'T/2', { ...READING_TYPE, ...fields }),
      block('1', reading(START, 273)),
      block('2', reading(START, value)),
    )

  test('what is fed in (flowDirection 19) is not use, but tells of generation', async () => {
    const data = await read(two({ flowDirection: '19' }, 50))
    expect([[...data.readings.watts], data.exported]).toEqual([[1092], true])
    expect((await read(two({ flowDirection: '19' }, 0))).exported).toBe(false)
  })

  test('energy goes before power, and other units are left out with a word', async () => {
    expect(await watts(two({ uom: '38' }, 999))).toEqual([1092])
    const { notes, readings } = await read(two({ uom: '73' }, 50))
    expect([[...readings.watts], notes.map(({ code }) => code)]).toEqual([[1092], ['channels-left-out']])
  })

  test('two meters of use are refused by name', async () => {
    const [fault] = await faultsOf(two({}, 50))
    expect(fault!.code).toBe('several-meters')
    expect(fault!.message).toContain('"U/1/M/1", "U/1/M/2"')
  })

  test('intervals that lead to none of several types are refused', async () => {
    const text = two({ uom: '38' }, 50)
      .replace('href="U/1/M/2/IntervalBlock"/>\n<content>', 'href="elsewhere"/>\n<content>')
      .replace('href="U/1/M/2/IntervalBlock/1"', 'href="elsewhere/1"')
    expect(await codesOf(text)).toEqual(['no-reading-type'])
  })
})

describe('local time', () => {
  test('comes from the feed’s parameters, or from the time zone that is named', async () => {
    const own = (await read(one(reading(START, 273)))).clock
    expect([own.offsetAt(START), own.offsetAt(START + 120 * 86_400)]).toEqual([-18_000, -14_400])
    const named = (await read(one(reading(START, 273)), 'Europe/Berlin')).clock
    expect([named.name, named.offsetAt(START)]).toEqual(['Europe/Berlin', 3600])
  })

  test('that is nowhere told is refused with what to do; a time zone that is named helps', async () => {
    const text = feed(meter('1', 'T/1', READING_TYPE), block('1', reading(START, 273)))
    expect(await codesOf(text)).toEqual(['no-time-zone'])
    expect(await watts(text, 'Europe/Berlin')).toEqual([1092])
  })

  test('rules that are none are refused', async () => {
    expect(await codesOf(one(reading(START, 273)).replace('360E2000', 'summer'))).toEqual([
      'faulty-time-parameters',
    ])
  })
})

describe('faults', () => {
  test('are named by line, all at once', async () => {
    const text = one(
      reading(START, 273),
      reading('soon', 273),
      reading(START, 'much'),
      reading(START, 1, 0),
      '<IntervalReading/>',
    )
    const line = text.split('\n').findIndex((row) => row.includes('soon')) + 1
    expect((await faultsOf(text)).map(({ pointer, code }) => `${pointer} ${code}`)).toEqual([
      `/lines/${line} invalid-number`,
      `/lines/${line + 1} invalid-number`,
      `/lines/${line + 2} invalid-number`,
      `/lines/${line + 3} required`,
      `/lines/${line + 3} required`,
    ])
  })

  test('end at a hundred, and the answer says that the rest was not read', async () => {
    const faults = await faultsOf(one(...Array.from({ length: 500 }, () => reading('x', 1))))
    expect([faults.length, faults.at(-1)!.code]).toEqual([101, 'too-many-faults'])
  })

  test.each([
    ['a DOCTYPE', '<!DOCTYPE feed [<!ENTITY a "b">]><feed/>', 'doctype-refused'],
    ['an entity that XML does not have', '<feed>&nbsp;</feed>', 'not-well-formed'],
    ['tags that do not match', '<feed><entry></feed>', 'not-well-formed'],
    ['an end in the middle', '<feed><entry>', 'not-well-formed'],
    ['nothing', '', 'not-well-formed'],
    ['JSON', '{"feed":1}', 'not-well-formed'],
    ['elements a thousand deep', '<a>'.repeat(1000), 'too-deep'],
    ['a text without end', `<feed>${'x'.repeat(600_000)}`, 'piece-too-long'],
    ['an attribute without end', `<feed a="${'x'.repeat(600_000)}`, 'piece-too-long'],
    ['another encoding', '<?xml version="1.0" encoding="ISO-8859-1"?><feed/>', 'not-utf-8'],
    ['a page', '<html xmlns="http://www.w3.org/1999/xhtml"><body/></html>', 'no-readings'],
  ])('%s is refused', async (_, text, code) => {
    expect(await codesOf(text)).toContain(code)
  })

  test('bytes that are no UTF-8 are refused', async () => {
    async function* bytes() {
      yield Uint8Array.of(0x3c, 0x61, 0x3e, 0xff, 0xfe)
    }
    await expect(readEspi(bytes())).rejects.toMatchObject({ faults: [{ code: 'not-utf-8' }] })
  })
})

test('how the bytes are cut into pieces changes nothing', async () => {
  const text = one(reading(START, 273), reading(START + 900, '282'))
    .replace('U/1/M/1', 'Ü/1/M/1')
    .replace('U/1/M/1', 'Ü/1/M/1')
  const whole = await read(text, undefined, 1_000_000)
  for (const size of [1, 7, 64]) expect((await read(text, undefined, size)).readings).toEqual(whole.readings)
})
