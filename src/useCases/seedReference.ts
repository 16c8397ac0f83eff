import type { NamedEmissionFactor } from '../core/emissions/emissionFactor.ts'
import type { NamedTariff } from '../core/money/tariff.ts'
import type { ReferenceEntry } from '../core/reference/referenceEntry.ts'
import type { Deps } from './deps.ts'
import { storedFirst } from './storedFirst.ts'

const REASON = 'Sample tariffs and published emission factors, loaded once into an empty store'

export interface ReferenceSeed {
  readonly tariffs: ReadonlyMap<string, NamedTariff>
  readonly emissionFactors: ReadonlyMap<string, NamedEmissionFactor>
}

/**
 * Puts the tariffs and emission factors that the service is shipped with into an empty store, as revision 1. Where there
 * is any revision, all is left as it is, so an operator's edits are never overwritten.
 * @returns the number of entries stored; 0 where the store was not empty
 */
export async function seedReference(
  { referenceStore, referenceMemory, clock }: Pick<Deps, 'referenceStore' | 'referenceMemory' | 'clock'>,
  { tariffs, emissionFactors }: ReferenceSeed,
): Promise<number> {
  if ((await referenceStore.latestRevision()) > 0) return 0
  const entries: ReferenceEntry[] = [
    ...[...tariffs.values()].map((content) => ({ kind: 'tariff' as const, content })),
    ...[...emissionFactors.values()].map((content) => ({ kind: 'emission-factor' as const, content })),
  ]
  const stored = await storedFirst(referenceStore, entries, { reason: REASON, at: clock() })
  await referenceMemory.refresh()
  return stored ? entries.length : 0
}
