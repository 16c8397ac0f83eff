import { chooseEmissionFactor } from '../emissions/chooseEmissionFactor.ts'
import type { EmissionFactor, FactorKind, NamedEmissionFactor } from '../emissions/emissionFactor.ts'
import type { Used, Warning } from '../estimate/estimate.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { SavingsRequest } from './savingsRequest.ts'

/** What a kWh less keeps out of the air, and how that is known. */
export interface SavingsFactor {
  readonly factor: EmissionFactor
  /** Null where the household gave a factor and nobody said what it is of. */
  readonly kind: FactorKind | null
  readonly source: string
}

/**
 * What is saved changes what the last stations generate, so a marginal factor counts: the one given for it, else the
 * household's own where that is marginal, else the published one of the same region. Without any, the household's own
 * factor stands in, and a warning says so.
 * @param used what the estimate used
 */
export function savingsFactor(
  request: SavingsRequest,
  used: Pick<Used, 'emissionFactor' | 'emissionFactorSource'>,
  settings: EstimateSettings,
): { readonly used: SavingsFactor; readonly warnings: readonly Warning[] } {
  const { marginalFactor, marginalFactorCode } = request.plan ?? {}
  if (marginalFactor)
    return {
      used: { factor: marginalFactor, kind: 'marginal', source: 'given in the request' },
      warnings: [],
    }
  const own = ownEntry(request, settings)
  const named =
    marginalFactorCode === undefined
      ? own?.kind === 'marginal' && own
      : settings.emissionFactors.get(marginalFactorCode)
  if (named) return { used: published(named), warnings: [] }
  const { regionCode: region, year } = own ?? {}
  const marginal =
    region === undefined || year === undefined
      ? null
      : chooseEmissionFactor(settings.emissionFactors, { region, year, kind: 'marginal' })
  if (marginal) return { used: published(marginal.entry), warnings: marginal.warnings }
  return {
    used: { factor: used.emissionFactor, kind: own?.kind ?? null, source: used.emissionFactorSource },
    warnings: [NO_MARGINAL],
  }
}

const NO_MARGINAL: Warning = {
  code: 'no-marginal-factor',
  message:
    'No marginal emission factor is known for this grid, so that savings count with the household’s own factor. What is saved changes what the last power stations generate, which may emit more or less than the average; give marginalFactor or marginalFactorCode.',
}

const published = ({ code, region, year, kind, factor, source }: NamedEmissionFactor): SavingsFactor => ({
  factor,
  kind,
  source: `${code} (${region}, ${year}, ${kind}): ${source}`,
})

/** The published factor that the household's own is, which the estimate has found already; null where it brought one. */
function ownEntry(
  { emissionFactor, emissionFactorCode, emissionFactorFor }: SavingsRequest,
  { emissionFactors, defaultEmissionFactorCode }: EstimateSettings,
): NamedEmissionFactor | null {
  if (emissionFactor) return null
  if (emissionFactorFor) return chooseEmissionFactor(emissionFactors, emissionFactorFor)!.entry
  return emissionFactors.get(emissionFactorCode ?? defaultEmissionFactorCode)!
}
