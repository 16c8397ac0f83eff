import type { Catalogue } from '../catalogue/catalogue.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import type { Estimate, Warning } from '../estimate/estimate.ts'
import { estimate } from '../estimate/estimateHousehold.ts'
import { resolveHousehold } from '../estimate/resolveHousehold.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import { minorUnit } from '../money/minorUnit.ts'
import { availableMeasures } from './availableMeasure.ts'
import { bestSet } from './bestSet.ts'
import { HABIT_KINDS } from './measure.ts'
import { offerParts } from './offerParts.ts'
import type { Part } from './part.ts'
import { inMinorUnits } from './partOf.ts'
import { planHousehold, type PlanHousehold } from './planHousehold.ts'
import { drawOf, planDrawing, type SavingDraws, savingDraws } from './savingDraws.ts'
import { type FiguresOf, figuresOf } from './savingFigures.ts'
import { savingsFactor } from './savingsFactor.ts'
import type { ChosenSet, KeptPowered, OfferedMeasure, SavingsPlan } from './savingsPlan.ts'
import type { PlanGoal, PlanOptions, SavingsRequest } from './savingsRequest.ts'
import { unitChoices, type Unit, worthBy } from './unitChoices.ts'
import { unitsOf } from './unitsOf.ts'

/**
 * What one household could do about its standby: every measure at every place with what it saves, costs and how surely it
 * pays back, the best set within a budget, and what must stay powered.
 *
 * A set saves the household's energy before less that after: first settings and replacements, then whatever cuts a device
 * off, then what the measures draw themselves is taken away; nothing is counted twice.
 * @param request checked by checkHousehold and checkPlanOptions
 * @throws DomainError plan-too-large
 */
export function planSavings(
  request: SavingsRequest,
  catalogue: Catalogue,
  settings: EstimateSettings,
): SavingsPlan {
  const options = request.plan ?? {}
  const goal = options.goal ?? (options.budget === undefined ? 'most-money-after-cost' : 'most-energy')
  const before = estimate(request, catalogue, settings)
  const household = planHousehold(resolveHousehold(request, catalogue, settings))
  const { parts, refusals } = offerParts(availableMeasures(options, settings.measures), options, household)
  const units = unitsOf(parts, household)
  const chosen = chosenParts(units, household, options, goal)
  const factor = savingsFactor(request, before.used, settings)
  const figures = figuresOf(household, factor.used, planDrawing(household))
  const { measures, plan } = reckoned(units, parts, chosen, household, figures)
  const isSample = measures.some(({ sampleData }) => sampleData)
  return {
    ...headOf(before),
    sampleData: before.sampleData || isSample,
    goal,
    budget: options.budget ?? null,
    savingsFactor: factor.used,
    total: before.total,
    measures,
    plan,
    notOffered: refusals,
    keptPowered: keptPowered(household),
    warnings: [...before.warnings, ...factor.warnings, ...(isSample ? [SAMPLE_MEASURES] : [])],
    cautions: cautionsFor(settings.cautions, 'savings'),
  }
}

const headOf = ({
  catalogueRevision,
  overlayRevision,
  referenceRevision,
  coverageProbability,
  currency,
  used,
}: Estimate) => ({
  catalogueRevision,
  overlayRevision,
  referenceRevision,
  coverageProbability,
  currency,
  methodVersion: used.methodVersion,
  standbyPricePerKwh: used.standbyPricePerKwh,
  priceBasis: used.priceBasis,
})

function chosenParts(
  units: readonly Unit[],
  household: PlanHousehold,
  { budget }: PlanOptions,
  goal: PlanGoal,
): ReadonlySet<Part> {
  const { currency } = household.resolved.used.tariff
  const bound = budget === undefined ? null : inMinorUnits(budget, currency)
  const worth = worthBy(goal, 10 ** minorUnit(currency))
  const choices = units.map((unit) => unitChoices(unit, household, worth, bound ?? Infinity))
  return new Set(bestSet(choices, bound).parts)
}

/** Figures of every measure alone and of the chosen set, unit by unit, so that no more draws are held than one unit has. */
function reckoned(
  units: readonly Unit[],
  parts: readonly Part[],
  chosen: ReadonlySet<Part>,
  household: PlanHousehold,
  figures: FiguresOf,
): Pick<SavingsPlan, 'measures' | 'plan'> {
  const offered = new Map<Part, OfferedMeasure>()
  const saved: SavingDraws[] = []
  for (const unit of units) {
    const draw = drawOf(planDrawing(household))
    const own = [...unit.strips, ...unit.parts]
    for (const part of own)
      offered.set(part, {
        ...shown(part, chosen.has(part), household),
        figures: figures([part], savingDraws([part], household, draw)),
      })
    const taken = own.filter((part) => chosen.has(part))
    if (taken.length > 0) saved.push(savingDraws(taken, household, draw))
  }
  const set = parts.filter((part) => chosen.has(part))
  return {
    measures: parts.map((part) => offered.get(part)!),
    plan: set.length > 0 ? planOf(set, saved, figures) : null,
  }
}

const planOf = (set: readonly Part[], saved: readonly SavingDraws[], figures: FiguresOf): ChosenSet => ({
  measureIds: set.map(({ id }) => id),
  figures: figures(set, saved.reduce(added)),
})

function added(a: SavingDraws, b: SavingDraws): SavingDraws {
  const surcharges = [a.surcharge, b.surcharge].filter((draws) => draws !== null)
  return {
    kwh: a.kwh.map((kwh, i) => kwh + b.kwh[i]!),
    surcharge:
      surcharges.length < 2
        ? (surcharges[0] ?? null)
        : surcharges[0]!.map((money, i) => money + surcharges[1]![i]!),
  }
}

function shown(part: Part, chosen: boolean, { devices }: PlanHousehold) {
  const { measure, places, outlet, count, notes } = part
  const { code, name, kind, persistence, sampleData, source } = measure
  return {
    id: part.id,
    measureCode: code,
    name,
    kind,
    deviceIds: places.map((place) => devices[place]!.id),
    outlet,
    count,
    needsHabit: HABIT_KINDS.includes(kind),
    persistence,
    chosen,
    sampleData,
    source,
    notes,
  }
}

const keptPowered = ({ devices }: PlanHousehold): KeptPowered[] =>
  devices.flatMap(({ id, device, category }) =>
    category.keepPowered
      ? [
          {
            deviceId: id,
            label: device.label ?? null,
            category: category.code,
            categoryName: category.name,
            ...category.keepPowered,
          },
        ]
      : [],
  )

const SAMPLE_MEASURES: Warning = {
  code: 'sample-measures',
  message:
    'Prices, lives, own draws and habits of the measures are invented sample data; give the household’s own figures in plan.measures before anything is bought.',
}
