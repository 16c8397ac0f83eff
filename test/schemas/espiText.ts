/** Invented feeds in the form of ESPI, for the tests of its reader. */
const ESPI = 'xmlns="http://naesb.org/espi"'
const children = (fields: Readonly<Record<string, string>>) =>
  Object.entries(fields)
    .map(([name, value]) => `<${name}>${value}</${name}>`)
    .join('')

export const READING_TYPE = {
  accumulationBehaviour: '4',
  flowDirection: '1',
  intervalLength: '900',
  powerOfTenMultiplier: '0',
  uom: '72',
}

export const reading = (start: number | string, value: number | string, duration: number | string = 900) =>
  `<IntervalReading><timePeriod><duration>${duration}</duration><start>${start}</start></timePeriod><value>${value}</value></IntervalReading>`

export const block = (meter: string, ...readings: readonly string[]) => `<entry>
<link rel="self" href="U/1/M/${meter}/IntervalBlock/1"/><link rel="up" href="U/1/M/${meter}/IntervalBlock"/>
<content><IntervalBlock ${ESPI}>
${readings.join('\n')}
</IntervalBlock></content></entry>`

export const meter = (name: string, type: string, fields: Readonly<Record<string, string>>) => `<entry>
<link rel="self" href="U/1/M/${name}"/><link rel="up" href="U/1/M"/><link rel="related" href="U/1/M/${name}/IntervalBlock"/><link rel="related" href="${type}"/>
<content><MeterReading ${ESPI}/></content></entry>
<entry><link rel="self" href="${type}"/><content><ReadingType ${ESPI}>${children(fields)}</ReadingType></content></entry>`

export const LOCAL_TIME = `<entry><link rel="self" href="L/1"/><content><LocalTimeParameters ${ESPI}><dstEndRule>B40E2000</dstEndRule><dstOffset>3600</dstOffset><dstStartRule>360E2000</dstStartRule><tzOffset>-18000</tzOffset></LocalTimeParameters></content></entry>`

export const usagePoint = (kind: string) =>
  `<entry><link rel="self" href="U/1"/><link rel="related" href="U/1/M"/><content><UsagePoint ${ESPI}><ServiceCategory><kind>${kind}</kind></ServiceCategory></UsagePoint></content></entry>`

export const feed = (...entries: readonly string[]) =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<feed xmlns="http://www.w3.org/2005/Atom">\n${entries.join('\n')}\n</feed>\n`

/** Bytes in pieces of `size`, as a connection brings them. */
export async function* bytesOf(text: string, size = 1000): AsyncGenerator<Uint8Array> {
  const bytes = new TextEncoder().encode(text)
  for (let i = 0; i < bytes.length; i += size) yield bytes.subarray(i, i + size)
}
