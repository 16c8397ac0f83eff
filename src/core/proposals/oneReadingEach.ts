import type { ReadDevice } from './readDevice.ts'

const latestOf = (readings: readonly ReadDevice[]) =>
  readings.reduce((latest, { visit }) => (visit > latest ? visit : latest), '')

/**
 * One reading for each device of one household, category and mode: that of the latest visit that read the device. A device
 * without an id can't be told from those of other visits, so where the latest visit has such devices, it alone counts; and
 * devices without an id on earlier visits do not.
 * @param readings of one household, category and mode
 */
export function oneReadingEach(readings: readonly ReadDevice[]): ReadDevice[] {
  const latest = latestOf(readings)
  const last = [...atOwnPlaces(readings.filter(({ visit }) => visit === latest)).values()]
  if (last.some(({ device }) => device === null)) return last
  const byDevice = new Map<string, ReadDevice>()
  for (const reading of readings) {
    if (reading.device === null) continue
    const known = byDevice.get(reading.device)
    if (known === undefined || known.visit <= reading.visit) byDevice.set(reading.device, reading)
  }
  return [...byDevice.values()]
}

/** An inventory that was stored anew while it was being read may have come twice; its later state counts. */
const atOwnPlaces = (readings: readonly ReadDevice[]) =>
  new Map(readings.map((reading) => [reading.place, reading]))
