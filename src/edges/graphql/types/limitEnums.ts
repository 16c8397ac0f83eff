import type { CautionPlace } from '../../../core/cautions/caution.ts'
import type { Jurisdiction, LimitCondition, LimitPurpose, SupplyType } from '../../../core/limits/limit.ts'
import type { LimitReason, LimitVerdict } from '../../../core/limits/limitCheck.ts'
import { enumOf } from '../enumOf.ts'

export const JurisdictionEnum = enumOf<Jurisdiction>('Jurisdiction', 'Where a limit holds.', {
  EU: 'European Union.',
  US: 'United States.',
  international: 'A marking that several countries use.',
})

export const LimitPurposeEnum = enumOf<LimitPurpose>('LimitPurpose', 'What a limit is for.', {
  'placing-on-the-market': 'What may be sold.',
  purchasing: 'What an office may buy.',
  'efficiency-mark': 'What a mark on the label promises.',
})

export const LimitConditionEnum = enumOf<LimitCondition>(
  'LimitCondition',
  'What a device does in the mode, where limits differ by it.',
  {
    any: 'The limit does not go by it.',
    'reactivation-only': 'Waiting to be switched on, with an indicator light at most.',
    'information-or-status-display': 'Showing information or status, more than an indicator light.',
    'high-network-availability': 'Its main job is to pass on network traffic.',
    'other-networked': 'Any other device on a network.',
  },
)

export const ExternalSupplyTypeEnum = enumOf<SupplyType>(
  'ExternalSupplyType',
  'Kind of external power supply.',
  {
    'ac-dc': 'Direct current out.',
    'ac-ac': 'Alternating current out.',
    'low-voltage': 'Below 6 V and at least 0.55 A out.',
    'multiple-output': 'Several voltages at once.',
  },
)

export const LimitVerdictEnum = enumOf<LimitVerdict>(
  'LimitVerdict',
  'How a power with its interval lies to a limit.',
  {
    below: 'Wholly below the limit.',
    above: 'Wholly above the limit and the verification tolerance.',
    'cannot-be-told': 'Neither.',
  },
)

export const LimitReasonEnum = enumOf<LimitReason['code']>('LimitReasonCode', 'Why a verdict is as it is.', {
  'wholly-below': 'The whole interval is below the limit.',
  'wholly-above': 'The whole interval is above the limit and its tolerance.',
  'interval-crosses-limit': 'The limit lies within the interval.',
  'within-verification-tolerance': 'Above the limit, but not wholly above its tolerance.',
  'limits-disagree': 'Several limits may apply, and do not agree.',
  'no-limit-applies': 'No limit that is known applies.',
})

export const CautionPlaceEnum = enumOf<CautionPlace>('CautionPlace', 'Which answers a caution goes with.', {
  estimate: 'Estimates of a household.',
  'reading-power': 'Readings of real power.',
  'reading-energy': 'Readings of energy.',
  'reading-samples': 'Series of samples.',
  'reading-current': 'Readings of current.',
  'reading-apparent-power': 'Readings of apparent power.',
  'reading-declared': 'Labels and data sheets.',
  'reading-thermal': 'Readings of warmth.',
  savings: 'Savings plans.',
  report: 'Reports.',
  'limit-check': 'Comparisons with limits.',
  'base-load': 'Base loads.',
  population: 'Populations.',
  verification: 'Verifications.',
})
