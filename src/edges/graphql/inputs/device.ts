import { LIMITS } from '../../../schemas/common.ts'
import { builder } from '../builder.ts'
import { ModeEnum } from '../types/enums.ts'
import { ExactOrRangeInput } from './range.ts'
import { ReadingInput } from './reading.ts'
import { HoursOfWeekInput } from './tariff.ts'

const DeviceModeInput = builder.inputType('DeviceModeInput', {
  description: 'A mode that the device spends hours in while nobody uses it.',
  fields: (t) => ({
    mode: t.field({ type: ModeEnum, required: true, description: 'The mode.' }),
    hoursPerWeek: t.field({
      type: ExactOrRangeInput,
      description:
        "Hours a week (h), 0 to 168; the catalogue's by default. The modes of a device add up to at most 168.",
    }),
    schedule: t.field({
      type: [HoursOfWeekInput],
      description: 'When in the week the hours fall, for prices by time; over the whole week by default.',
    }),
    reading: t.field({
      type: ReadingInput,
      description: 'What was read in this mode; a typical draw from the catalogue where nothing was.',
    }),
  }),
})

export const DeviceInput = builder.inputType('DeviceInput', {
  description: 'One entry of the inventory. Only the category is required.',
  fields: (t) => ({
    id: t.string({ description: 'Name within this request, to find the entry in the answer.' }),
    label: t.string({ description: 'A name for people.' }),
    category: t.string({ required: true, description: 'Code, name or alias of a category.' }),
    quantity: t.int({
      description: `Number of such devices, 1 to ${LIMITS.quantity}; the category's by default.`,
    }),
    year: t.int({ description: 'Year of manufacture.' }),
    outlet: t.string({ description: 'Outlet that it is plugged into.' }),
    modes: t.field({ type: [DeviceModeInput], description: "The modes; the category's by default." }),
  }),
})
