import type { Warning } from '../core/estimate/estimate.ts'
import type { IntervalData } from '../core/baseLoad/intervalData.ts'
import type { LocalClock } from '../core/baseLoad/localClock.ts'
import { clockOfRules, readDaylightRule } from '../core/baseLoad/ruleClock.ts'
import { clockOfZone } from '../core/baseLoad/zoneClock.ts'
import { FaultList, shown } from './baseLoadFaults.ts'
import { type ByteStream, textOf } from './baseLoadText.ts'
import { type Channel, channelsOf } from './espiChannels.ts'
import { type EspiEntry, EspiFeed } from './espiFeed.ts'
import { openXml } from './espiXml.ts'

/**
 * Reads interval data in the form of ESPI (NAESB REQ.21), an Atom feed, as it arrives: no more of it is held than the
 * intervals' figures. Energy is preferred where a feed has energy and power.
 * @param timeZone IANA name; in place of the feed's own local time parameters
 * @throws FaultyInput naming up to MOST_FAULTS faults by line
 */
export async function readEspi(bytes: ByteStream, timeZone?: string): Promise<IntervalData> {
  const faults = new FaultList()
  const feed = new EspiFeed(faults)
  const xml = openXml(feed, faults)
  for await (const text of textOf(bytes, faults)) xml.write(text)
  xml.close()
  if (feed.columns.length === 0 && faults.faults.length === 0)
    faults.stop(
      null,
      'no-readings',
      'There is no IntervalReading of the namespace http://naesb.org/espi in the file; export the interval data, not the bill.',
    )
  const clock = timeZone === undefined ? ownClock(feed.entries, faults) : clockOfZone(timeZone)
  const channels = channelsOf(feed.entries)
  const { counts, notes } = chooseChannels(channels, feed, faults)
  faults.refuse()
  const readings = feed.columns.toReadings(
    (value, seconds, entry) =>
      seconds > 0 ? (counts[entry]?.meaning.toWatts(value, seconds) ?? null) : null,
    (entry) => channels[entry]?.intervalSeconds ?? 0,
  )
  const fedIn = (entry: number) => channels[entry]?.meaning.kind === 'fed-in'
  return {
    form: 'espi',
    readings,
    clock,
    exported: feed.columns.anyAboveZero(fedIn),
    estimated: feed.estimated,
    notes,
  }
}

type Use = Channel & { readonly meaning: Extract<Channel['meaning'], { readonly kind: 'use' | 'net' }> }
const isUse = (channel: Channel): channel is Use =>
  (channel.meaning.kind === 'use' || channel.meaning.kind === 'net') && channel.service === '0'

/** The channels of the one meter reading that counts, by entry; and what was left out beside it. */
function chooseChannels(
  channels: readonly (Channel | null)[],
  { columns, entries }: EspiFeed,
  faults: FaultList,
): { counts: readonly (Use | null)[]; notes: Warning[] } {
  const present = [...columns.channels()].map((entry) => ({
    entry: entries[entry]!,
    channel: channels[entry] ?? null,
  }))
  if (present.some(({ channel }) => channel === null))
    faults.add(
      null,
      'no-reading-type',
      'Intervals lead to no ReadingType by the feed’s links, so their unit is not known; export the whole feed.',
    )
  const found = [
    ...new Map(present.flatMap(({ channel }) => (channel ? [[keyOf(channel), channel]] : []))).values(),
  ]
  const usable = found.filter(isUse)
  const energy = usable.filter(({ meaning }) => meaning.unit === 'Wh')
  const candidates = energy.length > 0 ? energy : usable
  const names = [...new Set(candidates.map(({ meterReading }) => meterReading))]
  if (names.length > 1)
    faults.add(
      null,
      'several-meters',
      `The feed has ${names.length} meter readings of electricity drawn (${names.slice(0, 5).map(shown).join(', ')}); send a feed with one of them.`,
    )
  const reasons = [...new Set(found.flatMap((channel) => reasonOf(channel) ?? []))]
  if (candidates.length === 0 && found.length > 0)
    faults.add(
      null,
      'no-usable-readings',
      `No readings tell what the home draws${reasons.length > 0 ? `: ${reasons.join('; ')}` : ''}. Export the energy of each interval in Wh, delivered to the home.`,
    )
  const notes: Warning[] = []
  if (reasons.length > 0)
    notes.push({ code: 'channels-left-out', message: `Some readings were left out: ${reasons.join('; ')}.` })
  if (candidates.some(({ meaning }) => meaning.instantaneous))
    notes.push({
      code: 'instantaneous-power',
      message:
        'The readings are moments, not means over each interval; what cycles is caught on or off by chance.',
    })
  const keys = new Set(candidates.map(keyOf))
  const counts = channels.map((channel) =>
    channel && isUse(channel) && keys.has(keyOf(channel)) ? channel : null,
  )
  return { counts, notes }
}

const keyOf = ({ meterReading, meaning, service }: Channel) =>
  JSON.stringify([meterReading, meaning, service])

function reasonOf({ meaning, service }: Channel): string | null {
  if (service !== '0') return `service kind ${service} is not electricity`
  return meaning.kind === 'unusable' ? meaning.reason : null
}

/** The feed's LocalTimeParameters. */
function ownClock(entries: readonly EspiEntry[], faults: FaultList): LocalClock {
  const found = entries.find(({ holds }) => holds === 'LocalTimeParameters')
  if (!found) {
    faults.add(
      null,
      'no-time-zone',
      'The feed has no LocalTimeParameters, so it is not known when it is night; name the home’s timeZone, such as America/New_York.',
    )
    return { name: 'unknown', offsetAt: () => 0 }
  }
  const { tzOffset = '', dstOffset = '0', dstStartRule = 'FFFFFFFF', dstEndRule = 'FFFFFFFF' } = found.fields
  const offsets = { tzOffset: Number(tzOffset), dstOffset: Number(dstOffset) }
  const rules = [readDaylightRule(dstStartRule), readDaylightRule(dstEndRule)] as const
  const sound =
    tzOffset !== '' && Math.abs(offsets.tzOffset) <= 54_000 && Math.abs(offsets.dstOffset) <= 7_200
  if (!sound)
    faults.add(
      null,
      'faulty-time-parameters',
      `tzOffset ${shown(tzOffset)} or dstOffset ${shown(dstOffset)} is no offset in seconds.`,
    )
  if (rules.includes(undefined))
    faults.add(
      null,
      'faulty-time-parameters',
      `dstStartRule ${shown(dstStartRule)} or dstEndRule ${shown(dstEndRule)} is no daylight saving rule; name the home’s timeZone instead.`,
    )
  return clockOfRules(offsets, rules[0] ?? null, rules[1] ?? null)
}
