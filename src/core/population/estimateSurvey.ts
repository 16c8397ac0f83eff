import type { CautionList } from '../cautions/caution.ts'
import { cautionsFor } from '../cautions/cautions.ts'
import { METHOD_VERSION } from '../estimate/methodVersion.ts'
import { designEffect } from './designEffect.ts'
import { type Expanded, expandStratum, type OfHome, sumOf, type Weights } from './expandStratum.ts'
import { type SampledStratum, sampledStrata } from './sampledStratum.ts'
import type { StandardErrorForm, Survey, SurveyEstimate, SurveyFigure } from './survey.ts'
import { surveySentences } from './surveySentences.ts'
import { tQuantile } from './tQuantile.ts'

export interface SurveySettings {
  readonly coverageProbability: number
  readonly cautions: CautionList
}

const VALUE: Weights = { value: 1, auxiliary: 0, one: 0 }
const AUXILIARY: Weights = { value: 0, auxiliary: 1, one: 0 }
const ONE: Weights = { value: 0, auxiliary: 0, one: 1 }
const valueOf: OfHome = ({ value }) => value
const auxiliaryOf: OfHome = ({ auxiliary = 0 }) => auxiliary

/** Twelve significant digits: more than any survey has, and without the last bits of a processor's logarithm. */
const rounded = (value: number) => Number(value.toPrecision(12))

/**
 * What a whole population draws, from surveyed homes: expansion of a stratified sample of homes or of whole clusters
 * (one stage), with finite population correction and t-intervals of
 *
 *   degrees of freedom = sampled units - strata          units: homes, or clusters where clusters were drawn
 *
 * The mean is the ratio of two totals, of the values and of the homes; where homes were drawn singly the latter is known
 * and the mean is plain. Domains are totals of values that count as zero outside the domain; their means are ratios. A
 * ratio's variance is that of its residuals y - B x, expanded in the same way (linearisation). Formulas: expandStratum.ts.
 * @param survey checked by checkSurvey
 */
export function estimateSurvey(survey: Survey, settings: SurveySettings): SurveyEstimate {
  const strata = sampledStrata(survey)
  const coverage = survey.coverageProbability ?? settings.coverageProbability
  const correction = survey.finitePopulationCorrection ?? true
  const degrees = strata.reduce((sum, { sampledUnits }) => sum + sampledUnits, -strata.length)
  const quantile = tQuantile((1 + coverage) / 2, degrees)
  const expand: Expand = (ofHome, weights) =>
    strata.map((stratum) => expandStratum(stratum, ofHome, weights, correction))
  const figure = (of: Expanded) => figureOf(of, quantile)
  const byStratum = expand(valueOf, VALUE)
  const total = sumOf(byStratum)
  const mean = ratioOf(expand, valueOf, () => 1, VALUE, ONE)
  return {
    method: 'survey',
    methodVersion: METHOD_VERSION,
    unit: survey.unit ?? null,
    coverageProbability: coverage,
    sampledHomes: strata.reduce((sum, { sampledHomes }) => sum + sampledHomes, 0),
    degreesOfFreedom: degrees,
    tQuantile: rounded(quantile),
    finitePopulationCorrection: correction,
    populationHomes: rounded(homesOf(strata, expand)),
    total: figure(total),
    mean: figure(mean),
    designEffect: roundedOrNull(designEffect(strata, total.variance, mean.total, correction)),
    strata: strata.map(({ name, sampledHomes, sampledUnits, populationUnits }, i) => {
      return { name, sampledHomes, sampledUnits, populationUnits, total: figure(byStratum[i]!) }
    }),
    domains: domainsOf(survey).map((name) => ({ name, ...domainFigures(name, survey, expand, figure) })),
    ratio: survey.ratio ? ratioEstimate(survey.ratio, expand, figure) : null,
    ...surveySentences(survey, strata, total, quantile),
    cautions: cautionsFor(settings.cautions, 'population'),
  }
}

type Expand = (ofHome: OfHome, weights: Weights) => Expanded[]
const roundedOrNull = (value: number | null) => (value === null ? null : rounded(value))

function figureOf({ total, variance }: Expanded, quantile: number): SurveyFigure {
  const error = Math.sqrt(variance)
  return {
    expected: rounded(total),
    standardError: rounded(error),
    low: rounded(total - quantile * error),
    high: rounded(total + quantile * error),
  }
}

/** Homes of the population: as the strata give them, or estimated from how many the drawn clusters hold. */
function homesOf(strata: readonly SampledStratum[], expand: Expand): number {
  const known = strata.every(({ populationHomes }) => populationHomes !== null)
  if (!known) return sumOf(expand(() => 1, ONE)).total
  return strata.reduce((sum, { populationHomes }) => sum + populationHomes!, 0)
}

/** B = t_y/t_x, and its variance V(t of y - B x)/t_x^2. */
function ratioOf(expand: Expand, over: OfHome, under: OfHome, ofOver: Weights, ofUnder: Weights): Expanded {
  const below = sumOf(expand(under, ofUnder)).total
  const ratio = sumOf(expand(over, ofOver)).total / below
  const residual = expand((home) => over(home) - ratio * under(home), {
    value: ofOver.value - ratio * ofUnder.value,
    auxiliary: ofOver.auxiliary - ratio * ofUnder.auxiliary,
    one: ofOver.one - ratio * ofUnder.one,
  })
  return { total: ratio, variance: sumOf(residual).variance / below ** 2 }
}

/**
 * The total of a quantity y by one, x, whose total is known: t = B t_x, B = t_y(est)/t_x(est).
 *
 *   with-mean-factor:     SE = t_x SE(B)             = (t_x/t_x(est)) SE(t of y - B x)     Lohr, 3rd edition
 *   without-mean-factor:  SE = t_x(est) SE(B)        = SE(t of y - B x)                    Lohr, 1st edition
 */
function ratioEstimate(
  { auxiliaryTotal, standardErrorForm = 'with-mean-factor' }: NonNullable<Survey['ratio']>,
  expand: Expand,
  figure: (of: Expanded) => SurveyFigure,
): NonNullable<SurveyEstimate['ratio']> {
  const ratio = ratioOf(expand, valueOf, auxiliaryOf, VALUE, AUXILIARY)
  const scale = scaleOf(standardErrorForm, auxiliaryTotal, sumOf(expand(auxiliaryOf, AUXILIARY)).total)
  return {
    ratio: rounded(ratio.total),
    auxiliaryTotal,
    standardErrorForm,
    total: figure({ total: ratio.total * auxiliaryTotal, variance: ratio.variance * scale ** 2 }),
  }
}

const scaleOf = (form: StandardErrorForm, known: number, estimated: number) =>
  form === 'with-mean-factor' ? known : estimated

const domainsOf = ({ homes = [] }: Survey) =>
  [...new Set(homes.flatMap(({ domain }) => domain ?? []))].sort((a, b) => (a < b ? -1 : 1))

function domainFigures(
  name: string,
  { homes = [] }: Survey,
  expand: Expand,
  figure: (of: Expanded) => SurveyFigure,
) {
  const within: OfHome = ({ domain }) => (domain === name ? 1 : 0)
  const valueWithin: OfHome = (home) => within(home) * home.value
  return {
    sampledHomes: homes.filter(({ domain }) => domain === name).length,
    homes: figure(sumOf(expand(within, ONE))),
    total: figure(sumOf(expand(valueWithin, VALUE))),
    mean: figure(ratioOf(expand, valueWithin, within, VALUE, ONE)),
  }
}
