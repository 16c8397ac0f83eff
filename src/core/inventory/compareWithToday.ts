import type { Catalogue } from '../catalogue/catalogue.ts'
import { basisOf, type EstimateBasis, settingsOfBasis } from '../estimate/basis.ts'
import type { Estimate } from '../estimate/estimate.ts'
import { estimate } from '../estimate/estimateHousehold.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import { without } from '../without.ts'
import { significant } from '../quantity/significant.ts'
import { checkHousehold } from './checkHousehold.ts'
import type { Household } from './household.ts'
import type { StoredEstimate } from './storedEstimate.ts'

export const CHANGE_CAUSES = [
  'visit-gone',
  'inventory',
  'catalogue',
  'tariff',
  'emission-factor',
  'settings',
  'method',
  'no-longer-fits',
] as const
export type ChangeCause = (typeof CHANGE_CAUSES)[number]

/** How a stored estimate stands to what would be estimated today. */
export interface Standing {
  readonly outOfDate: boolean
  /** What moved on since, as far as it changes the estimate. */
  readonly because: readonly ChangeCause[]
  /** Today's expected total less the stored one; null where nothing changed, or today there can be no estimate. */
  readonly change: {
    readonly energyKwhPerYear: number
    /** Null where the currency is another one. */
    readonly costPerYear: number | null
    readonly emissionsKgCo2ePerYear: number
  } | null
}

/** What there is today: the household as it was on the same visit, null where the visit is gone. */
export interface Today {
  readonly household: Household | null
  readonly catalogue: Catalogue
  readonly settings: EstimateSettings
}

const UP_TO_DATE: Standing = { outOfDate: false, because: [], change: null }

/**
 * Whether a stored estimate would come out otherwise today, why, and by how much. A catalogue edit that leaves this household's
 * figures as they are does not make its estimates out of date.
 */
export function compareWithToday(stored: StoredEstimate, today: Today): Standing {
  if (today.household === null) return { outOfDate: true, because: ['visit-gone'], change: null }
  // The coverage may have been asked for with the estimate alone.
  const { coverageProbability } = stored.household
  const household = { ...today.household, ...(coverageProbability !== undefined && { coverageProbability }) }
  if (checkHousehold(household, today.catalogue, today.settings).length > 0)
    return { outOfDate: true, because: ['no-longer-fits'], change: null }
  const now = estimate(household, today.catalogue, today.settings)
  if (figuresOf(now) === figuresOf(stored.result)) return UP_TO_DATE
  return {
    outOfDate: true,
    because: causes(stored, household, today),
    change: changeOf(stored.result, now),
  }
}

function causes(stored: StoredEstimate, household: Household, { catalogue, settings }: Today): ChangeCause[] {
  const [then, now] = [stored.basis, basisOf(household, settings)]
  const withCatalogue = estimate(stored.household, catalogue, settingsOfBasis(then))
  const moved: Readonly<Record<Exclude<ChangeCause, 'visit-gone' | 'no-longer-fits'>, boolean>> = {
    inventory: textOf(stored.household) !== textOf(household),
    catalogue: figuresOf(withCatalogue) !== figuresOf(stored.result),
    tariff: textOf(then.tariffs) !== textOf(now.tariffs),
    'emission-factor': textOf(then.emissionFactors) !== textOf(now.emissionFactors),
    settings: textOf(rest(then)) !== textOf(rest(now)),
    method: stored.methodVersion !== withCatalogue.used.methodVersion,
  }
  return CHANGE_CAUSES.filter((cause) => cause in moved && moved[cause as keyof typeof moved])
}

const rest = (basis: EstimateBasis) =>
  without(basis, 'tariffs', 'emissionFactors', 'cautions', 'referenceRevision')

function changeOf(then: Estimate, now: Estimate): Standing['change'] {
  const difference = (of: (total: Estimate['total']) => { readonly expected: number }) =>
    significant(of(now.total).expected - of(then.total).expected)
  return {
    energyKwhPerYear: difference(({ energyKwhPerYear }) => energyKwhPerYear),
    costPerYear: then.currency === now.currency ? difference(({ costPerYear }) => costPerYear) : null,
    emissionsKgCo2ePerYear: difference(({ emissionsKgCo2ePerYear }) => emissionsKgCo2ePerYear),
  }
}

/** Everything that was worked out, and neither the revision's number nor what is said around it. */
const figuresOf = ({ devices, total, currency }: Estimate): string => textOf([devices, total, currency])

/** The same text whatever order the fields are in, since a store or a patch may have changed it. */
const textOf = (value: unknown): string => JSON.stringify(value, (_name, part: unknown) => sorted(part))

const sorted = (part: unknown) =>
  typeof part === 'object' && part !== null && !Array.isArray(part)
    ? Object.fromEntries(Object.entries(part).sort(([one], [other]) => (one < other ? -1 : 1)))
    : part
