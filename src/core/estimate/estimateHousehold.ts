import type { Catalogue } from '../catalogue/catalogue.ts'
import { revisionsUsed } from '../catalogue/revisionsUsed.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import { emissionsOf } from '../emissions/emissionsOf.ts'
import type { Household } from '../inventory/household.ts'
import { moneyInterval } from '../money/money.ts'
import { basisInWords } from '../money/priceBasis.ts'
import { priceStandby, type StandbyCost } from '../money/priceStandby.ts'
import { standbyEnergy } from '../money/standbyEnergy.ts'
import { priceWarnings } from '../money/priceWarnings.ts'
import { type Interval, intervalOfSum, scaleInterval } from '../quantity/intervalOfSum.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { confidenceShares, totalConfidence } from './confidence.ts'
import type { DeviceEstimate, Estimate, TotalEstimate, Warning } from './estimate.ts'
import { deviceCosts } from './deviceCosts.ts'
import { estimateDevice } from './estimateDevice.ts'
import { type ModeTerms, modesOf, modeTerms } from './estimateMode.ts'
import { expectedWidths } from './expectedWidths.ts'
import { nextReadings } from './nextReadings.ts'
import { type ResolvedHousehold, resolveHousehold } from './resolveHousehold.ts'
import type { EstimateSettings } from './settings.ts'

const HOURS_PER_WEEK = 168

/**
 * What one household's devices draw while nobody uses them: power, energy, cost and emissions of each device and of
 * all together, with coverage intervals and confidence flags.
 *
 * The same household against the same catalogue and settings gives the same result, to the last digit shown.
 * @param household checked by checkHousehold
 */
export function estimate(household: Household, catalogue: Catalogue, settings: EstimateSettings): Estimate {
  const resolved = resolveHousehold(household, catalogue, settings)
  const terms = resolved.devices.map((device) =>
    modesOf(device).map((mode) => modeTerms(mode, device, resolved)),
  )
  const modes = terms.flat()
  const energy = intervalOfSum(
    modes.map((mode) => mode.energy),
    resolved.coverage,
  )
  const { tariff, weeksPerYear } = resolved.used
  const cost = priceStandby(tariff, resolved.used, standbyEnergy(energy, modes), modes, resolved.coverage)
  const costOf = deviceCosts(cost, tariff.currency)
  const devices = resolved.devices.map((device, i) =>
    estimateDevice(device, terms[i]!, resolved, energy.expected, costOf),
  )
  const readable = resolved.devices.flatMap(({ id }, i) =>
    terms[i]!.map((mode) => ({ deviceId: id, terms: mode })),
  )
  const wattmeter = settings.meterPresets['plug-in-wattmeter'].accuracies.W
  const sampleFigures = devices.some(({ sampleData }) => sampleData)
  return {
    ...revisionsUsed(catalogue),
    referenceRevision: settings.referenceRevision,
    coverageProbability: resolved.coverage,
    currency: tariff.currency,
    sampleData: sampleFigures || resolved.tariffIsSample,
    used: {
      ...resolved.used,
      standbyPricePerKwh: significant(cost.price.perKwh.toNumber()),
      priceBasis: basisInWords(cost.price.basis, tariff),
    },
    devices,
    total: totalOf(modes, energy, devices, resolved, cost),
    nextReadings: nextReadings(readable, weeksPerYear, wattmeter),
    ...(household.expectedWidths && {
      expectedWidths: expectedWidths(readable, weeksPerYear, wattmeter, resolved.coverage),
    }),
    warnings: [
      ...warningsOf(energy, sampleFigures, resolved),
      ...priceWarnings(tariff, cost.price),
      ...resolved.tariffWarnings,
      ...resolved.factorWarnings,
    ],
    cautions: cautionsFor(settings.cautions, 'estimate'),
  }
}

function totalOf(
  modes: readonly ModeTerms[],
  energy: Interval,
  devices: readonly DeviceEstimate[],
  { coverage, used }: ResolvedHousehold,
  cost: StandbyCost,
): TotalEstimate {
  const terms = modes.map((mode) => mode.energy)
  const hoursPerYear = used.weeksPerYear * HOURS_PER_WEEK
  const shares = confidenceShares(
    devices.flatMap((device) =>
      device.modes.map((mode) => ({
        confidence: mode.confidence,
        expectedKwh: mode.energyKwhPerYear.expected,
      })),
    ),
  )
  return {
    powerW: significantInterval(scaleInterval(energy, 1000 / hoursPerYear)),
    energyKwhPerYear: significantInterval(energy),
    costPerYear: moneyInterval(cost.total, used.tariff.currency),
    emissionsKgCo2ePerYear: significantInterval(emissionsOf(energy, terms, coverage, used.emissionFactor)),
    confidence: totalConfidence(shares),
    confidenceShares: {
      measured: significant(shares.measured),
      'partly-measured': significant(shares['partly-measured']),
      declared: significant(shares.declared),
      assumed: significant(shares.assumed),
    },
  }
}

function warningsOf(
  energy: Interval,
  sampleFigures: boolean,
  { used, tariffIsSample }: ResolvedHousehold,
): Warning[] {
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
  if (used.annualUseKwh !== null && energy.expected > used.annualUseKwh)
    warnings.push({
      code: 'more-than-annual-use',
      message: `The devices come to ${significant(energy.expected)} kWh/yr, more than the household’s annual use of ${used.annualUseKwh} kWh; check hours, quantities and readings.`,
    })
  return warnings
}
