import { builder } from '../builder.ts'
import { FactorKindEnum, GASES_IN_WORDS, SourceMarkEnum } from '../types/tariffEnums.ts'
import { EmissionFactorInput } from './estimate.ts'
import { TariffInput } from './tariff.ts'

const code = 'Stable name; never used before.'
const source = 'Where the price is from; "invented sample" makes it sample data.'
const citation = 'Citation: who published it, in what, and when.'
const counted = `What it counts. ${GASES_IN_WORDS}`

export const NamedTariffInput = builder.inputType('NamedTariffInput', {
  description: 'A tariff that there is none of yet.',
  fields: (t) => ({
    code: t.string({ required: true, description: code }),
    name: t.string({ required: true, description: 'Name in plain words.' }),
    tariff: t.field({ type: TariffInput, required: true, description: 'The price structure.' }),
    source: t.string({ required: true, description: source }),
  }),
})

export const TariffChangesInput = builder.inputType('TariffChangesInput', {
  description: 'What is to change; what is left out, or null, stays as it is.',
  fields: (t) => ({
    name: t.string({ description: 'Name in plain words.' }),
    tariff: t.field({ type: TariffInput, description: 'The price structure, as a whole.' }),
    source: t.string({ description: source }),
  }),
})

export const NamedEmissionFactorInput = builder.inputType('NamedEmissionFactorInput', {
  description: 'A published emission factor that there is none of yet.',
  fields: (t) => ({
    code: t.string({ required: true, description: code }),
    regionCode: t.string({ required: true, description: 'The grid; the same in all years and kinds.' }),
    region: t.string({ required: true, description: 'The grid in words.' }),
    kind: t.field({ type: FactorKindEnum, required: true, description: 'What the factor is for.' }),
    year: t.int({ required: true, description: 'Year that it is of.' }),
    factor: t.field({ type: EmissionFactorInput, required: true, description: 'The factor.' }),
    gases: t.string({ required: true, description: counted }),
    source: t.string({ required: true, description: citation }),
    mark: t.field({ type: SourceMarkEnum, required: true, description: 'How well it is confirmed.' }),
  }),
})

export const EmissionFactorChangesInput = builder.inputType('EmissionFactorChangesInput', {
  description: 'What is to change; what is left out, or null, stays as it is.',
  fields: (t) => ({
    regionCode: t.string({ description: 'The grid; the same in all years and kinds.' }),
    region: t.string({ description: 'The grid in words.' }),
    kind: t.field({ type: FactorKindEnum, description: 'What the factor is for.' }),
    year: t.int({ description: 'Year that it is of.' }),
    factor: t.field({ type: EmissionFactorInput, description: 'The factor, as a whole.' }),
    gases: t.string({ description: counted }),
    source: t.string({ description: citation }),
    mark: t.field({ type: SourceMarkEnum, description: 'How well it is confirmed.' }),
  }),
})

type Fields = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0]

/** Why; of every edit. */
export const reasonField = (t: Fields) => ({
  reason: t.string({ required: true, description: 'Why; kept with the revision, 3 to 500 characters.' }),
})

/** What an edit of something that exists says besides. */
export const knownField = (t: Fields) => ({
  code: t.string({ required: true, description: 'Its code.' }),
  basedOn: t.int({
    required: true,
    description: '`changedInRevision` of it as it was read; stale where it was edited since.',
  }),
  ...reasonField(t),
})
