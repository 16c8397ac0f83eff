import type { EstimateSettings } from '../core/estimate/settings.ts'
import type { ReferenceData } from '../core/reference/referenceData.ts'
import type { Deps } from './deps.ts'
import { referenceAt } from './referenceAt.ts'

/**
 * What sums need besides the catalogue: what the operator set, and the tariffs and emission factors at a revision, or the
 * newest where none is named. Touches no database unless a past revision is asked for.
 * @throws DomainError unknown-reference-revision
 */
export const settingsAt = async (
  deps: Deps,
  referenceRevision: number | undefined,
): Promise<EstimateSettings> => settingsWith(deps, await referenceAt(deps, referenceRevision))

/** The same with the newest tariffs and emission factors, at once. */
export const settingsNow = (deps: Deps): EstimateSettings =>
  settingsWith(deps, deps.referenceMemory.current())

const settingsWith = ({ settings }: Deps, { revision, entries }: ReferenceData): EstimateSettings => ({
  ...settings,
  tariffs: entries.tariff,
  emissionFactors: entries['emission-factor'],
  referenceRevision: revision,
})
