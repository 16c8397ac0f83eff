import type { Estimator } from '../../../core/baseLoad/estimators.ts'
import type { IntervalData } from '../../../core/baseLoad/intervalData.ts'
import { enumOf } from '../enumOf.ts'

export const BaseLoadEstimatorKindEnum = enumOf<Estimator>(
  'BaseLoadEstimatorKind',
  'Ways to read a base load off interval data. All are in use, and no standard names one of them.',
  {
    'minimum-hour': 'The least mean over any one hour.',
    'mean-of-daily-minima': 'The mean of the least reading of each day.',
    'percentile-5': 'The power that 5 % of the readings stay below.',
    'percentile-10': 'The power that 10 % of the readings stay below.',
    'night-window-mean': 'The mean of the readings that start in the night window.',
  },
)

export const IntervalDataFormEnum = enumOf<IntervalData['form']>(
  'IntervalDataForm',
  'Form in which interval data came; over GraphQL it is always JSON.',
  { espi: 'An ESPI feed.', csv: 'CSV.', json: 'JSON.' },
)
