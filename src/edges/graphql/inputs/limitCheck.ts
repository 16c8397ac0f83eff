import { builder } from '../builder.ts'
import { ModeEnum } from '../types/enums.ts'
import { ExternalSupplyTypeEnum, JurisdictionEnum } from '../types/limitEnums.ts'
import { SupplyInput } from './estimate.ts'
import { MeterInput } from './meter.ts'
import { ReadingInput } from './reading.ts'

const PowerIntervalInput = builder.inputType('PowerIntervalInput', {
  description: 'A power with its interval at the coverage probability, W.',
  fields: (t) => ({
    expected: t.float({ required: true, description: 'Mean, W.' }),
    low: t.float({ required: true, description: 'Lower end, W.' }),
    high: t.float({ required: true, description: 'Upper end, W.' }),
  }),
})

export const LimitCheckInput = builder.inputType('LimitCheckInput', {
  description:
    'A reading, or a power, and what finds the limit: its code, or jurisdiction, mode and date. Null is the same as absent. Fault pointers in error extensions are JSON Pointers into this input.',
  fields: (t) => ({
    reading: t.field({ type: ReadingInput, description: 'The reading.' }),
    meters: t.field({ type: [MeterInput], description: 'Meters that the reading may name.' }),
    supply: t.field({ type: SupplyInput, description: "Mains supply; the operator's setting by default." }),
    category: t.string({
      description:
        'Code, name or alias of a category, for the power factor of a reading of current or apparent power.',
    }),
    powerW: t.field({ type: PowerIntervalInput, description: 'In place of a reading.' }),
    limitCode: t.string({ description: 'One limit; else those that fit the fields below.' }),
    jurisdiction: t.field({ type: JurisdictionEnum, description: 'Where the device was sold.' }),
    mode: t.field({ type: ModeEnum, description: 'Mode in which it was read.' }),
    placedOnMarket: t.string({ description: 'When it was first sold: YYYY, YYYY-MM or YYYY-MM-DD.' }),
    showsStatus: t.boolean({
      description: 'In standby: whether it shows information or status, more than an indicator light.',
    }),
    highNetworkAvailability: t.boolean({
      description: 'In networked standby: whether its main job is to pass on network traffic.',
    }),
    supplyType: t.field({ type: ExternalSupplyTypeEnum, description: 'Kind of external power supply.' }),
    ratedOutputW: t.float({ description: 'Rated output of an external power supply, W.' }),
    coverageProbability: t.float({
      description: 'Probability that the interval shall hold the power, 0.5 to 0.99.',
    }),
    catalogueRevision: t.int({ description: 'Catalogue revision to use; the newest by default.' }),
    overlayRevision: t.int({
      description:
        "Revision of your organisation's own figures to use; 0 for none of them; the newest by default.",
    }),
  }),
})
