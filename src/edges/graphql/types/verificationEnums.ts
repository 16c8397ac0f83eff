import type {
  BetterKnown,
  Change,
  DeviceVerification,
  MeasureStatus,
} from '../../../core/verification/verification.ts'
import { enumOf } from '../enumOf.ts'

export const DeviceStatusEnum = enumOf<DeviceVerification['status']>(
  'DeviceStatus',
  'What became of a device between two visits.',
  {
    unchanged: 'Nothing is different.',
    changed: 'Something is different.',
    removed: 'Found at the first visit only.',
    added: 'Found at the second visit only.',
  },
)

export const ChangeCodeEnum = enumOf<Change['code']>('ChangeCode', 'What is different between two visits.', {
  'device-removed': 'The device is not there any more.',
  'device-added': 'The device was not there before.',
  'category-changed': 'Another category: another device.',
  'year-changed': 'Another year of manufacture: another device.',
  'year-known': 'The year of manufacture was known at one visit only.',
  'quantity-changed': 'More or fewer of the device.',
  'mode-added': 'A mode that the device did not have before.',
  'mode-removed': 'A mode that the device does not have any more.',
  'hours-changed': 'Other hours in a mode.',
  'schedule-changed': 'Other hours of the week.',
  'now-measured': 'The power was read at the second visit only.',
  'no-longer-measured': 'The power was read at the first visit only.',
  'better-known': 'The power is better known at one visit, but not by a reading.',
  'reading-changed': 'Another reading.',
})

export const IpmvpOptionEnum = enumOf<NonNullable<DeviceVerification['ipmvp']['option']>>(
  'IpmvpOption',
  'Option of retrofit isolation in the International Performance Measurement and Verification Protocol.',
  {
    A: 'The key parameter is measured, the rest is estimated.',
    B: 'All parameters are measured.',
  },
)

export const MeasureStatusEnum = enumOf<MeasureStatus>(
  'MeasureStatus',
  'Whether a planned measure was carried out.',
  {
    'carried-out': 'Its devices save energy, as much as was expected or more, or not surely less.',
    partly: 'Its devices save energy, but surely less than was expected.',
    'not-carried-out': 'Nothing is different but how well it is known, or more energy is used.',
    'cannot-be-told': 'Something is different, but the interval of the saving holds zero.',
  },
)

export const VisitEnum = enumOf<BetterKnown['rebasedVisit']>('VisitOfTwo', 'One of two visits.', {
  before: 'The first.',
  after: 'The second.',
})
