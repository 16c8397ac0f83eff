import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import type { Catalogue } from '../catalogue/catalogue.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import type { Warning } from '../estimate/estimate.ts'
import { type ResolvedHousehold, resolveHousehold } from '../estimate/resolveHousehold.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import { priceWarnings } from '../money/priceWarnings.ts'
import { intervalOfDifference } from '../quantity/intervalOfDifference.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { betterKnown } from './betterKnown.ts'
import { changesOf } from './changesOf.ts'
import { deviceContrasts } from './deviceContrasts.ts'
import { type DevicePair, matchDevices, type ModeAtVisit } from './matchDevices.ts'
import { planProgress } from './planProgress.ts'
import { priceOfSaving } from './priceOfSaving.ts'
import type { SavingRules } from './savingOf.ts'
import { SOURCES } from './sources.ts'
import { type Matched, verifyDevice } from './verifyDevice.ts'
import { verifyTotal } from './verifyTotal.ts'
import type { Verification, VerificationRequest, Visit } from './verification.ts'

/**
 * What two visits to one household say of what was saved between them: per device and in total, with intervals in which
 * what both visits share counts once, apart from what was only better known the second time.
 *
 * Saving = before - after. Weeks, hours of the week, price, grid and voltage are those of both visits.
 * @param request checked by checkVerification
 */
export function verifySavings(
  request: VerificationRequest,
  catalogue: Catalogue,
  settings: EstimateSettings,
): Verification {
  const { before: first, after: second, plan, ...shared } = request
  const [before, after] = [first, second].map((visit: Visit) =>
    resolveHousehold({ ...shared, ...visit }, catalogue, settings),
  ) as [ResolvedHousehold, ResolvedHousehold]
  const { coverage, used } = before
  const devices = matchDevices(before, after).map((pair) => ({
    pair,
    contrasts: deviceContrasts(pair, used.weeksPerYear),
    changes: changesOf(pair),
    rebased: betterKnown(pair, used.weeksPerYear, coverage),
  }))
  const rules = rulesOf(devices, before)
  const { price, basis } = rules.price
  const rebased = devices.flatMap((device) => device.rebased)
  const verified = devices.map((device) => verifyDevice(device, rules, used.weeksPerYear))
  const sampleFigures = devices.some(({ pair }) => modesOf(pair).some(({ terms }) => terms.sampleData))
  return {
    ...revisionsUsed(catalogue),
    referenceRevision: settings.referenceRevision,
    coverageProbability: coverage,
    currency: rules.currency,
    sampleData: sampleFigures || before.tariffIsSample,
    used: { ...used, standbyPricePerKwh: significant(price.perKwh.toNumber()), priceBasis: basis },
    devices: verified,
    total: verifyTotal(devices, rules, used.weeksPerYear),
    betterKnown: {
      items: rebased.map(({ item }) => item),
      differenceKwhPerYear: significantInterval(
        intervalOfDifference(
          rebased.map(({ contrast }) => contrast),
          coverage,
        ),
      ),
    },
    plan: plan ? planProgress(plan, devices.map(forPlan), coverage) : null,
    sources: SOURCES,
    warnings: [
      ...warningsOf(sampleFigures, before),
      ...priceWarnings(used.tariff, price),
      ...before.factorWarnings,
    ],
    cautions: cautionsFor(settings.cautions, 'verification'),
  }
}

const modesOf = ({ modes }: DevicePair): ModeAtVisit[] =>
  modes.flatMap(({ before, after }) => [before, after].filter((mode) => mode !== null))

/** Only to be known better is no measure. */
const KNOWN_BETTER: readonly string[] = ['now-measured', 'no-longer-measured', 'better-known', 'year-known']

const forPlan = ({ pair, contrasts, changes }: Matched) => ({
  id: pair.id,
  isChanged: changes.some(({ code }) => !KNOWN_BETTER.includes(code)),
  energy: contrasts.energy,
})

function rulesOf(devices: readonly Matched[], { coverage, used }: ResolvedHousehold): SavingRules {
  const { tariff, emissionFactor } = used
  const energy = intervalOfDifference(
    devices.flatMap(({ contrasts }) => contrasts.energy),
    coverage,
  )
  return {
    coverage,
    factor: emissionFactor,
    price: priceOfSaving(tariff, used, energy),
    currency: tariff.currency,
    onePrice: devices.every(({ pair }) => modesOf(pair).every(({ terms }) => terms.schedule === null)),
  }
}

function warningsOf(sampleFigures: boolean, { tariffIsSample, used }: ResolvedHousehold): Warning[] {
  const warnings: Warning[] = []
  if (sampleFigures)
    warnings.push({
      code: 'sample-data',
      message:
        'Figures of the catalogue (typical draws, hours, power factors) are invented sample data; they show how the service works, not what devices draw.',
    })
  if (tariffIsSample)
    warnings.push({
      code: 'sample-price',
      message: `The price is invented sample data (${used.tariffSource}); give the household’s own tariff.`,
    })
  return warnings
}
