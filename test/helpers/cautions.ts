import type { CautionList } from '../../src/core/cautions/caution.ts'

/** Cautions of their own, so that no test rests on the operator's file. */
export const cautions: CautionList = [
  {
    code: 'a-warning-for-all',
    message: 'Open nothing.',
    appliesTo: [
      'estimate',
      'reading-power',
      'reading-current',
      'savings',
      'report',
      'limit-check',
      'base-load',
      'population',
      'verification',
    ],
    source: 'A norm, chapter 3',
    mark: 'V2',
  },
  {
    code: 'a-warning-for-clamps',
    message: 'Clamp one conductor.',
    appliesTo: ['estimate', 'reading-current'],
    source: 'common practice, no source',
    mark: null,
  },
]
