import type { NamedEmissionFactor } from '../emissions/emissionFactor.ts'
import type { Fault } from '../fault.ts'
import { INVENTED } from '../invented.ts'
import type { ReferenceData } from './referenceData.ts'
import type { ReferenceEntry } from './referenceEntry.ts'

/** Shorter than this is a name at most; who published what, and when, takes more. */
const SHORTEST_CITATION = 10

/**
 * The rules on an entry whose shape is right, beside those on a tariff itself (core/money/tariffFaults.ts): a published
 * emission factor has a citation, and a grid has one factor of each kind for a year and what it counts.
 */
export function referenceFaults(newest: ReferenceData, { kind, content }: ReferenceEntry): Fault[] {
  if (kind === 'tariff') return []
  return [...citationFaults(content), ...twinFaults(content, newest.entries['emission-factor'])]
}

function citationFaults({ source }: NamedEmissionFactor): Fault[] {
  if (source.trim().length >= SHORTEST_CITATION && source.trim() !== INVENTED) return []
  return [
    {
      pointer: '/source',
      code: 'citation-missing',
      message: `A published emission factor needs its citation: who published it, in what, and when; "${source}" does not say so. A factor of your own goes into the estimate itself, as emissionFactor.`,
    },
  ]
}

function twinFaults(factor: NamedEmissionFactor, factors: ReadonlyMap<string, NamedEmissionFactor>): Fault[] {
  const { code, regionCode, kind, year, gases, retired } = factor
  const twin = [...factors.values()].find(
    (other) =>
      other.code !== code &&
      !other.retired &&
      other.regionCode === regionCode &&
      other.kind === kind &&
      other.year === year &&
      other.gases === gases,
  )
  if (!twin || retired) return []
  return [
    {
      pointer: '/code',
      code: 'factor-twice',
      message: `${twin.code} is the ${kind} factor of ${regionCode} for ${year} that counts ${gases} already. Change that one, or retire it first.`,
    },
  ]
}
