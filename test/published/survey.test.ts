import { describe, expect, test } from 'vitest'
import { estimateSurvey } from '../../src/core/population/estimateSurvey.ts'
import type { Survey, SurveyedHome } from '../../src/core/population/survey.ts'
import { tQuantile } from '../../src/core/population/tQuantile.ts'
import { relativeError, ROUNDING, unitsOff } from './support/printed.ts'

/**
 * Published survey estimates. The data sets are about schools and farms: what matters is that the sums are those of the
 * sampling literature.
 */
const settings = { coverageProbability: 0.95, cautions: [] }
const estimate = (survey: Omit<Survey, 'method'>) => estimateSurvey({ method: 'survey', ...survey }, settings)
const expectPrinted = (value: number, printed: string) =>
  expect(unitsOff(value, printed), `${value} against ${printed}`).toBeLessThanOrEqual(ROUNDING)

type Row = readonly [name: string, homes: number, sampled: number, mean: number, variance: number]
const strataOf = (rows: readonly Row[]) =>
  rows.map(([name, homes, sampled, mean, variance]) => ({
    name,
    homes,
    sample: { homes: sampled, mean, variance },
  }))

/** R package survey, data set apistrat (git:cran/survey@4834b8b data/api.rda), by type of school: N, n, mean, s^2 (C). */
const API: Readonly<Record<'enroll' | 'api00' | 'api99', readonly Row[]>> = {
  enroll: [
    ['E', 4421, 100, 416.78, 27576.880404],
    ['H', 755, 50, 1320.7, 450339.928571],
    ['M', 1018, 50, 832.48, 156307.275102],
  ],
  api00: [
    ['E', 4421, 100, 674.43, 15687.419293],
    ['H', 755, 50, 625.82, 11947.089388],
    ['M', 1018, 50, 636.6, 13824.857143],
  ],
  api99: [
    ['E', 4421, 100, 635.87, 17793.972828],
    ['H', 755, 50, 617.36, 12491.092245],
    ['M', 1018, 50, 610.2, 14043.102041],
  ],
}

describe('apistrat, a stratified sample of 200 out of 6194', () => {
  test('total, mean and standard errors of enroll are those that R prints (V: bookdown.org/mpfoley1973/survey)', () => {
    const { total, mean, degreesOfFreedom } = estimate({ strata: strataOf(API.enroll) })
    expectPrinted(total.expected, '3687178')
    expectPrinted(total.standardError, '114642')
    expectPrinted(mean.expected, '595.28')
    expectPrinted(mean.standardError, '18.509')
    expect(degreesOfFreedom).toBe(197)
  })

  test.each([
    ['enroll', '3687177.52', '114641.7152', '595.2821', '18.5085'],
    ['api00', null, null, '662.28736', '9.40894'],
    ['api99', null, null, '629.39485', '9.96395'],
  ] as const)('%s to all computed digits (C)', (name, total, totalError, mean, meanError) => {
    const found = estimate({ strata: strataOf(API[name]) })
    if (total !== null) expectPrinted(found.total.expected, total)
    if (totalError !== null) expectPrinted(found.total.standardError, totalError)
    expectPrinted(found.mean.expected, mean)
    expectPrinted(found.mean.standardError, meanError)
  })

  test('negative control: without the finite population correction the standard errors are others, and larger', () => {
    const strata = strataOf(API.enroll)
    const [withIt, without] = [estimate({ strata }), estimate({ strata, finitePopulationCorrection: false })]
    expect(unitsOff(without.total.standardError, '114642')).toBeGreaterThan(1_000)
    expect(without.total.standardError).toBeGreaterThan(withIt.total.standardError)
    expect(without.total.expected).toBe(withIt.total.expected)
  })
})

/** Lohr, Sampling: Design and Analysis, agstrat (git:cran/SDaA@9fd3994 data/agstrat.rda): acres92 by region (C). */
const AGSTRAT: readonly Row[] = [
  ['NC', 1054, 103, 300504.1553398058, 29618183543.289356],
  ['NE', 220, 21, 97629.8095238095, 7647472708.161901],
  ['S', 1382, 135, 211315.0444444444, 53587487856.19204],
  ['W', 422, 41, 662295.512195122, 396185950266.25604],
]

describe('agstrat, a stratified sample of 300 out of 3078 (published values V)', () => {
  const found = estimate({ strata: strataOf(AGSTRAT) })

  test('total and mean with their standard errors', () => {
    expectPrinted(found.total.expected, '909736035.392')
    expectPrinted(found.total.standardError, '50417248.252')
    expectPrinted(found.mean.expected, '295560.765')
    expectPrinted(found.mean.standardError, '16379.873')
  })

  test('the totals of the four regions with their standard errors', () => {
    const printed = [
      ['316731380', '16977399'],
      ['21478558', '3992889'],
      ['292037391', '26154840'],
      ['279488706', '39416342'],
    ] as const
    found.strata.forEach(({ total }, i) => {
      expectPrinted(total.expected, printed[i]![0])
      expectPrinted(total.standardError, printed[i]![1])
    })
    expect(found.strata).toHaveLength(4)
  })

  test('the t-interval has 296 degrees of freedom, and is not the one of the normal distribution', () => {
    expect(found.degreesOfFreedom).toBe(296)
    expectPrinted(found.total.low, '810514350')
    expectPrinted(found.total.high, '1008957721')
    expect(unitsOff(found.total.low, '810918229')).toBeGreaterThan(1_000)
  })

  test('negative control: without the finite population correction the standard error is about 5 % larger', () => {
    const without = estimate({ strata: strataOf(AGSTRAT), finitePopulationCorrection: false })
    expect(without.total.standardError / found.total.standardError).toBeGreaterThan(1.04)
    expect(unitsOff(without.total.standardError, '50417248.252')).toBeGreaterThan(1_000)
  })
})

/** 300 homes whose mean, s and residuals about y = B x have the published moments of agsrs (git:cran/SDaA data). */
function homesLikeAgsrs(): SurveyedHome[] {
  const [meanValue, ratio, residual, count] = [297897.0467, 0.9865652371, 31657.218, 300]
  const meanAuxiliary = meanValue / ratio
  const size = residual * Math.sqrt((count - 1) / count)
  return Array.from({ length: count }, (_, i) => {
    const auxiliary = meanAuxiliary * (1 + 0.9 * Math.sin((2 * Math.PI * (i >> 1)) / (count / 2)))
    return { auxiliary, value: ratio * auxiliary + (i % 2 === 0 ? size : -size) }
  })
}

describe('agsrs, a simple random sample of 300 out of 3078', () => {
  test('mean and total with their standard errors (published V, recomputed C)', () => {
    const { mean, total } = estimate({
      strata: [
        { name: 'all', homes: 3078, sample: { homes: 300, mean: 297897.0467, variance: 344551.8948 ** 2 } },
      ],
    })
    expectPrinted(mean.standardError, '18898.434')
    expectPrinted(total.expected, '916927110')
    expectPrinted(total.standardError, '58169381')
    // The mean is given to 4 decimals, so the total is known to 3078 x 0.00005 = 0.15.
    expect(Math.abs(total.expected - 916927109.64)).toBeLessThan(0.16)
    expect(relativeError(total.standardError, 58169381.17)).toBeLessThan(2e-9)
  })

  test('the 95 % interval of the mean is a t-interval, a little wider than the published one with 1.96', () => {
    const { mean, degreesOfFreedom } = estimate({
      strata: [
        { name: 'all', homes: 3078, sample: { homes: 300, mean: 297897.0467, variance: 344551.8948 ** 2 } },
      ],
    })
    expect(degreesOfFreedom).toBe(299)
    expect(mean.low).toBeLessThan(260856)
    expect(mean.high).toBeGreaterThan(334938)
    expectPrinted(mean.expected - 1.96 * mean.standardError, '260856')
    expectPrinted(mean.expected + 1.96 * mean.standardError, '334938')
  })

  test.each([
    ['with-mean-factor', 5546162], // 3rd edition
    ['without-mean-factor', 5344567.5], // 1st edition; printed as 5344567 and 5344568
  ] as const)('ratio by acres87, %s: the standard error is %d', (standardErrorForm, error) => {
    const { ratio } = estimate({
      strata: [{ name: 'all', homes: 3078 }],
      homes: homesLikeAgsrs(),
      ratio: { auxiliaryTotal: 964470625, standardErrorForm },
    })
    expectPrinted(ratio!.ratio, '0.9865652371')
    expect(Math.abs(ratio!.total.expected - 951513191)).toBeLessThan(1)
    expect(Math.abs(ratio!.total.standardError - error)).toBeLessThan(1)
  })

  test('the form of the 3rd edition counts where none is asked for', () => {
    const { ratio } = estimate({
      strata: [{ name: 'all', homes: 3078 }],
      homes: homesLikeAgsrs(),
      ratio: { auxiliaryTotal: 964470625 },
    })
    expect(ratio!.standardErrorForm).toBe('with-mean-factor')
    expectPrinted(ratio!.total.standardError, '5546162')
  })
})

describe('five suites of four out of a hundred suites (Lohr, example 5.2; git:cran/SDaA vignette, V)', () => {
  const grades = [
    [3.08, 2.6, 3.44, 3.04],
    [2.36, 3.04, 3.28, 2.68],
    [2.0, 2.56, 2.52, 1.88],
    [3.0, 2.88, 3.44, 3.64],
    [2.68, 1.92, 3.28, 3.2],
  ]
  const homes = grades.flatMap((suite, i) => suite.map((value) => ({ cluster: `suite-${i}`, value })))
  const strata = [{ name: 'all', clusters: 100 }]

  test('total 1130.4 with a standard error of 67.16666 without finite population correction, as R and Stata print', () => {
    const found = estimate({ strata, homes, finitePopulationCorrection: false })
    expectPrinted(found.total.expected, '1130.4')
    expectPrinted(found.total.standardError, '67.16666')
    expect(found.degreesOfFreedom).toBe(4)
  })

  test('mean 2.826 with a standard error of 0.164 with it, as the book says (from memory)', () => {
    const { mean, populationHomes } = estimate({ strata, homes })
    expect(populationHomes).toBe(400)
    expectPrinted(mean.expected, '2.826')
    expectPrinted(mean.standardError, '0.164')
  })
})

/** Quantiles of Student's t, as the nearest doubles, from an arbitrary-precision incomplete beta function (mpmath) (C). */
const QUANTILES: readonly (readonly [degrees: number, p95: number, p975: number, p995: number])[] = [
  [1, 6.313751514675043, 12.706204736174705, 63.65674116287158],
  [2, 2.9199855803537256, 4.302652729749464, 9.924843200918293],
  [3, 2.3533634348018238, 3.1824463052837095, 5.840909309733357],
  [4, 2.1318467863266504, 2.7764451051977943, 4.604094871349993],
  [5, 2.0150483733330242, 2.5705818356363155, 4.032142983555228],
  [14, 1.7613101357748921, 2.144786687917804, 2.976842734370835],
  [29, 1.699127026533498, 2.0452296421327043, 2.7563859036706053],
  [37, 1.6870936195962636, 2.0261924630291097, 2.7154087215499882],
  [197, 1.652625219265506, 1.9720790337785028, 2.601015641689563],
  [296, 1.6500177430555525, 1.9680107275502556, 2.592540566528306],
  [1000, 1.6463788172854648, 1.9623390808264085, 2.580754698065951],
  [1999, 1.6456162481872627, 1.961151420170562, 2.5782910195219233],
  [2000, 1.6456158666989076, 1.961150826099438, 2.578289787557519],
  [100000, 1.6448688647849696, 1.9599877075346095, 2.575878469908375],
]

test.each(QUANTILES)(
  'the t quantiles of %d degrees of freedom are right to 1e-10',
  (degrees, ...quantiles) => {
    const probabilities = [0.95, 0.975, 0.995]
    quantiles.forEach((quantile, i) => {
      expect(relativeError(tQuantile(probabilities[i]!, degrees), quantile)).toBeLessThan(1e-10)
      expect(relativeError(tQuantile(1 - probabilities[i]!, degrees), -quantile)).toBeLessThan(1e-10)
    })
  },
)
