import type { MeasureKind } from '../../../core/savings/measure.ts'
import type { RefusalCode } from '../../../core/savings/offered.ts'
import type { PlanGoal } from '../../../core/savings/savingsRequest.ts'
import { enumOf } from '../enumOf.ts'

export const MeasureKindEnum = enumOf<MeasureKind>(
  'SavingsMeasureKind',
  'What a household can do about standby.',
  {
    'outlet-switch': 'Switch one device off where it is plugged in, by hand.',
    'switchable-strip': 'One switch for all devices of an outlet.',
    timer: 'Switches one device off for some hours a week by itself.',
    setting: 'The device spends hours in another mode.',
    replacement: 'Another device that draws less.',
  },
)

export const PlanGoalEnum = enumOf<PlanGoal>('SavingsPlanGoal', 'What the best set is.', {
  'most-energy': 'What saves most energy within the budget.',
  'most-money-after-cost':
    'What saves most money a year, less the price of each measure spread over its life.',
})

export const RefusalCodeEnum = enumOf<RefusalCode>('MeasureRefusal', 'Why a measure is not offered.', {
  'over-rated-load': 'The devices take more than the strip may carry.',
  'too-few-outlets': 'The strip has fewer plugs than there are devices.',
  'strip-behind-strip': 'There is a power strip already; one must never be plugged into another.',
  'needs-fixed-outlet': 'The devices belong on fixed outlets of their own.',
  'mode-unknown': 'What the device draws in the other mode is not known.',
  'saves-nothing': 'On average it would save nothing.',
  'price-in-other-currency': 'Its price is not in the currency of the tariff.',
})
