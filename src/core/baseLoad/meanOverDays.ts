import { meanOf } from '../readings/series/blockMeans.ts'
import { uncertaintyOfMean } from '../readings/series/uncertaintyOfMean.ts'
import { studentTQuantile } from '../quantity/studentTCdf.ts'
import type { DayFigure } from './dayFigure.ts'
import { percentile } from './percentile.ts'

/**
 * The mean of one figure a day, with what the scatter from day to day says of it.
 *
 *   low, high = mean -+ t u,   u and the degrees of freedom of t as uncertaintyOfMean has them
 *
 * Days that follow each other are alike, so they count as fewer than they are (n_eff). The meter's own error is not
 * in it, nor is that other seasons were not seen.
 * Source: JCGM 100:2008, G.3 (t-interval); Bayley and Hammersley 1946 for n_eff (M; see uncertaintyOfMean).
 * @param values in order of time, at least two
 */
export function meanOverDays(values: readonly number[]): DayFigure {
  const watts = meanOf(values)
  const { standard, effective, degrees } = uncertaintyOfMean(values)
  return {
    watts,
    days: values.length,
    effectiveDays: effective,
    degreesOfFreedom: degrees,
    quantile: (p) => Math.max(0, watts + standard * (standard === 0 ? 0 : studentTQuantile(p, degrees))),
  }
}

/**
 * A percentile of all readings, with what the scatter from day to day says of it: the share of each day's readings
 * that lie at or below it has a mean and an uncertainty over the days, and the ends are the percentiles of the shares
 * at the ends of that.
 *
 *   Q(p -+ t u),   u of the mean of the daily shares, as in meanOverDays
 *
 * Source: Woodruff, J. Am. Stat. Assoc. 47 (1952) 635-646 (M), with days as the clusters.
 * @param sorted all readings, ascending
 * @param sharesBelow of each day in order of time, the share of its readings at or below a value; at least two days
 */
export function percentileOverDays(
  sorted: Float64Array,
  share: number,
  sharesBelow: (watts: number) => readonly number[],
): DayFigure {
  const watts = percentile(sorted, share)
  const shares = sharesBelow(watts)
  const { standard, effective, degrees } = uncertaintyOfMean(shares)
  return {
    watts,
    days: shares.length,
    effectiveDays: effective,
    degreesOfFreedom: degrees,
    quantile: (p) =>
      percentile(sorted, share + standard * (standard === 0 ? 0 : studentTQuantile(p, degrees))),
  }
}
