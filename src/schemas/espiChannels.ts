import type { EspiEntry } from './espiFeed.ts'
import { type Meaning, meaningOf } from './espiReadingType.ts'

/** Where an entry's intervals belong: their ReadingType, and the meter reading that they are part of. */
export interface Channel {
  readonly meaning: Meaning
  readonly intervalSeconds: number
  readonly meterReading: string
  /** Service kind of the usage point; 0 is electricity. */
  readonly service: string
}

/**
 * Finds what each entry's intervals are, by the links of the feed: a block goes up to its MeterReading's blocks, and the
 * MeterReading is related to its ReadingType. Where the links lead nowhere, a feed with one ReadingType leaves no doubt.
 * @returns by entry number; null where the intervals' type can't be told
 */
export function channelsOf(entries: readonly EspiEntry[]): readonly (Channel | null)[] {
  const meterReadings = entries.filter(({ holds }) => holds === 'MeterReading')
  const types = entries.filter(({ holds }) => holds === 'ReadingType')
  const points = entries.filter(({ holds }) => holds === 'UsagePoint')
  const meaning = new Map(types.map((type) => [type, meaningOf(type.fields)]))
  const typeBySelf = new Map(types.flatMap((type) => type.self.map((self) => [self, type] as const)))
  const parents = new Map(
    meterReadings.flatMap((each) => [...each.related, ...each.self].map((link) => [link, each] as const)),
  )
  const known = new Map<string, Channel | null>()
  return entries.map((entry) => {
    const key = [...entry.up, '|', ...entry.self.map(withoutLast)].join(' ')
    const before = known.get(key)
    if (before !== undefined) return before
    const parent = [...entry.up, ...entry.self.map(withoutLast)]
      .map((link) => parents.get(link))
      .find(Boolean)
    const linked = parent?.related.map((link) => typeBySelf.get(link)).find(Boolean)
    const type =
      linked ?? (types.length === 1 ? types[0] : entry.fields['uom'] === undefined ? undefined : entry)
    const channel = type
      ? {
          meaning: meaning.get(type) ?? meaningOf(type.fields),
          intervalSeconds: Number(type.fields['intervalLength'] ?? 0),
          meterReading: parent?.self[0] ?? type.self[0] ?? '',
          service: serviceOf(parent, points),
        }
      : null
    known.set(key, channel)
    return channel
  })
}

const withoutLast = (link: string) => link.slice(0, Math.max(0, link.lastIndexOf('/')))

function serviceOf(parent: EspiEntry | undefined, points: readonly EspiEntry[]): string {
  const own = points.find(
    ({ self, related }) =>
      self.some((link) => parent?.self.some((inner) => inner.startsWith(`${link}/`))) ||
      related.some((link) => parent?.up.includes(link)),
  )
  const point = own ?? (points.length === 1 ? points[0] : undefined)
  return point?.fields['kind'] ?? '0'
}
