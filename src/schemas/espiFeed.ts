import { MOST_READINGS } from '../core/baseLoad/readings.ts'
import { ReadingColumns } from '../core/baseLoad/readingColumns.ts'
import type { FaultList } from './baseLoadFaults.ts'
import { shown } from './baseLoadFaults.ts'
import type { XmlHandler } from './espiXml.ts'

const ESPI = 'http://naesb.org/espi'
const MOST_ENTRIES = 200_000

/** One Atom entry: its links, and what it holds. */
export interface EspiEntry {
  readonly self: string[]
  readonly up: string[]
  readonly related: string[]
  holds: string | null
  /** Text of the children of a ReadingType, a LocalTimeParameters or a ServiceCategory, by name. */
  readonly fields: Record<string, string>
}

/** The elements whose text counts, and those that hold them. */
const HOLDERS = new Set(['ReadingType', 'LocalTimeParameters', 'ServiceCategory'])
const CONTENTS = new Set([
  'UsagePoint',
  'MeterReading',
  'ReadingType',
  'LocalTimeParameters',
  'IntervalBlock',
])
/** Qualities that say that a value was not simply read: edited, estimated, questionable, derived, projected (M). */
const ESTIMATED = new Set(['7', '8', '9', '10', '11', '12'])
const NUMBER = /^[+-]?\d+(\.\d+)?$/

/**
 * Gathers an ESPI feed as it is read. Intervals go straight into columns, with the number of their entry as channel:
 * what they mean may stand further down.
 */
export class EspiFeed implements XmlHandler {
  readonly entries: EspiEntry[] = []
  readonly columns = new ReadingColumns()
  estimated = 0
  #faults: FaultList
  #path: string[] = []
  #text = ''
  #interval = { start: '', duration: '', value: '', estimated: false }

  constructor(faults: FaultList) {
    this.#faults = faults
  }

  open(name: string, namespace: string, { attributes }: Parameters<XmlHandler['open']>[2]): void {
    this.#path.push(name)
    this.#text = ''
    if (name === 'entry') this.#startEntry()
    if (name === 'link') this.#link(attributes['rel']?.value, attributes['href']?.value)
    if (namespace !== ESPI) return
    if (name === 'IntervalReading') this.#interval = { start: '', duration: '', value: '', estimated: false }
    if (CONTENTS.has(name)) this.#current().holds = name
  }

  text(text: string): void {
    // Only short texts count; the rest is passed over as it comes.
    if (this.#text.length < 200) this.#text += text
  }

  close(name: string, namespace: string, line: number): void {
    this.#path.pop()
    if (namespace !== ESPI) return
    const [parent, text] = [this.#parent(0), this.#text.trim()]
    if (name === 'IntervalReading') this.#endReading(line)
    else if (parent === 'timePeriod' && this.#parent(1) === 'IntervalReading') {
      if (name === 'start') this.#interval.start = text
      if (name === 'duration') this.#interval.duration = text
    } else if (parent === 'IntervalReading' && name === 'value') this.#interval.value = text
    else if (parent === 'ReadingQuality' && name === 'quality')
      this.#interval.estimated ||= ESTIMATED.has(text)
    else if (HOLDERS.has(parent)) this.#current().fields[name] = text
  }

  #parent = (above: number): string => this.#path[this.#path.length - 1 - above] ?? ''

  /** Elements outside any entry, as a single resource has them, count as one entry without links. */
  #current(): EspiEntry {
    return this.entries.at(-1) ?? this.#startEntry()
  }

  #startEntry(): EspiEntry {
    if (this.entries.length === MOST_ENTRIES)
      this.#faults.stop(null, 'too-many-entries', `The feed has more than ${MOST_ENTRIES} entries.`)
    const entry: EspiEntry = { self: [], up: [], related: [], holds: null, fields: {} }
    this.entries.push(entry)
    return entry
  }

  #link(rel: string | undefined, href: string | undefined): void {
    const entry = this.entries.at(-1)
    if (!entry || href === undefined || this.#parent(1) !== 'entry') return
    if (rel === 'self' || rel === 'up' || rel === 'related') {
      if (entry[rel].length < 100) entry[rel].push(tidyLink(href))
    }
  }

  #endReading(line: number): void {
    const { start, duration, value, estimated } = this.#interval
    const bad = (what: string, text: string) =>
      this.#faults.add(
        line,
        text === '' ? 'required' : 'invalid-number',
        text === ''
          ? `This IntervalReading has no ${what}.`
          : `${what} is ${shown(text)}, which is no number.`,
      )
    const [startOk, valueOk] = [NUMBER.test(start), NUMBER.test(value)]
    const durationOk = duration === '' || (NUMBER.test(duration) && Number(duration) > 0)
    if (!startOk) bad('start', start)
    if (!valueOk) bad('value', value)
    if (!durationOk)
      this.#faults.add(line, 'invalid-number', `duration is ${shown(duration)}; it must be above 0 s.`)
    if (!startOk || !valueOk || !durationOk) return
    this.#current()
    if (estimated) this.estimated++
    const room = this.columns.push(
      Number(start),
      Number(duration),
      Number(value),
      line,
      this.entries.length - 1,
    )
    if (!room) this.#faults.stop(line, 'too-many-readings', `There are more than ${MOST_READINGS} readings.`)
  }
}

/** Links differ in a slash at the end, and nothing else that counts. */
const tidyLink = (href: string) => href.trim().replace(/\/+$/, '')
