import type { Change, DeviceAtVisit, DeviceVerification } from '../../../core/verification/verification.ts'
import { builder } from '../builder.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { FlagEnum, ModeEnum } from './enums.ts'
import { IntervalType } from './interval.ts'
import { ChangeCodeEnum, DeviceStatusEnum, IpmvpOptionEnum } from './verificationEnums.ts'
import { SavingPartsType, SavingType } from './verificationSaving.ts'
import { WarningType } from './warning.ts'

const ChangeType = builder.objectRef<Change>('DeviceChange').implement({
  description: 'One thing that is different between two visits to a device.',
  fields: (t) => ({
    code: t.expose('code', { type: ChangeCodeEnum, description: 'Kind of change.' }),
    mode: t.expose('mode', {
      type: ModeEnum,
      nullable: true,
      description: 'The mode that it is about; null where it is about the device.',
    }),
    message: t.exposeString('message', { description: 'The same in words.' }),
  }),
})

const DeviceAtVisitType = builder.objectRef<DeviceAtVisit>('DeviceAtVisit').implement({
  description: 'A device as an estimate of one visit gives it.',
  fields: (t) => ({
    quantity: t.exposeInt('quantity', { description: 'Number of such devices.' }),
    confidence: t.expose('confidence', { type: FlagEnum, description: 'How sure its origin is.' }),
    powerW: t.expose('powerW', { type: IntervalType, description: 'Power over the hours counted, W.' }),
    energyKwhPerYear: t.expose('energyKwhPerYear', {
      type: IntervalType,
      description: 'Energy, kWh a year.',
    }),
  }),
})

const IpmvpType = builder.objectRef<DeviceVerification['ipmvp']>('RetrofitIsolation').implement({
  description: 'Which option of retrofit isolation the saving of a device follows, and why.',
  fields: (t) => ({
    option: t.expose('option', {
      type: IpmvpOptionEnum,
      nullable: true,
      description: 'The option; null where the saving is an estimate.',
    }),
    reason: t.exposeString('reason', { description: 'Why, in words.' }),
  }),
})

export const DeviceVerificationType = builder.objectRef<DeviceVerification>('DeviceVerification').implement({
  description: 'One device at two visits.',
  fields: (t) => ({
    id: t.exposeString('id', { description: 'Id within the request.' }),
    label: t.exposeString('label', { nullable: true, description: 'Name for people.' }),
    category: t.exposeString('category', { description: 'Code of its category.' }),
    categoryName: t.exposeString('categoryName', { description: 'Name of its category.' }),
    status: t.expose('status', { type: DeviceStatusEnum, description: 'What became of it.' }),
    changes: t.field({
      type: [ChangeType],
      description: 'What is different.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.modes },
      resolve: ({ changes }) => changes,
    }),
    before: t.expose('before', {
      type: DeviceAtVisitType,
      nullable: true,
      description: 'At the first visit; null where it was not there.',
    }),
    after: t.expose('after', {
      type: DeviceAtVisitType,
      nullable: true,
      description: 'At the second visit; null where it was not there.',
    }),
    saving: t.expose('saving', { type: SavingType, description: 'What it saved.' }),
    parts: t.expose('parts', {
      type: SavingPartsType,
      nullable: true,
      description: 'What that consists of; null for a device that was found at one visit only.',
    }),
    ipmvp: t.expose('ipmvp', { type: IpmvpType, description: 'How the saving was verified.' }),
    warnings: t.field({
      type: [WarningType],
      description: 'What the reader of these figures must know.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.warnings },
      resolve: ({ warnings }) => warnings,
    }),
  }),
})
