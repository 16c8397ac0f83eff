import type { Warning } from '../estimate/estimate.ts'
import type { Expanded } from './expandStratum.ts'
import type { SampledStratum } from './sampledStratum.ts'
import type { Survey } from './survey.ts'

/** What a survey's estimate rests on, and what its reader must know, in words. */
export function surveySentences(
  survey: Survey,
  strata: readonly SampledStratum[],
  total: Expanded,
  quantile: number,
): { assumptions: string[]; warnings: Warning[] } {
  const clustered = survey.strata.some(({ clusters }) => clusters !== undefined)
  const correction = survey.finitePopulationCorrection ?? true
  return {
    assumptions: [
      clustered
        ? 'In each stratum clusters were drawn at random without replacement, and every home of a drawn cluster was surveyed.'
        : 'In each stratum homes were drawn at random without replacement, and every drawn home was surveyed.',
      correction
        ? 'The finite population correction is applied: what was surveyed adds no uncertainty.'
        : 'The finite population correction is left out: the homes stand for more than this population, and the intervals are wider.',
      'Intervals are t-intervals with sampled units less strata as degrees of freedom; they are not cut off at zero.',
      ...(clustered
        ? [
            'The mean is a ratio of two estimates, of values and of homes, since drawn clusters differ in how many homes they hold.',
          ]
        : []),
    ],
    warnings: [
      ...smallStrata(strata),
      ...(total.total > 0 && total.total < quantile * Math.sqrt(total.variance)
        ? [
            {
              code: 'interval-below-zero',
              message:
                'The interval of the total reaches below zero, which no draw can: the sample is too small, or a few homes are far off. Survey more homes, or put the far ones into a stratum of their own.',
            },
          ]
        : []),
    ],
  }
}

/** Below this many units a stratum's variance is hardly known; common practice, no source. */
const FEW_UNITS = 5

function smallStrata(strata: readonly SampledStratum[]): Warning[] {
  const small = strata.filter(({ sampledUnits }) => sampledUnits < FEW_UNITS).map(({ name }) => name)
  if (small.length === 0) return []
  const shown =
    small.length > 5 ? `${small.slice(0, 5).join(', ')} and ${small.length - 5} more` : small.join(', ')
  return [
    {
      code: 'few-sampled',
      message: `Fewer than ${FEW_UNITS} sampled units in: ${shown}. Their spread is hardly known.`,
    },
  ]
}
