import type { Tariff } from '../../core/money/tariff.ts'
import type { Reading } from '../../core/readings/reading.ts'
import type { EstimateInput } from './inputs/estimate.ts'

type Input = typeof EstimateInput.$inferInput
type Mode = NonNullable<Input['devices'][number]['modes']>[number]
/** Every member that one of the alternatives has. */
type MemberOf<T> = T extends unknown ? keyof T & string : never
type ReadingMember = MemberOf<NonNullable<Mode['reading']>>
type TariffMember = MemberOf<NonNullable<Input['tariff']>>

const READING_KINDS: Readonly<Record<ReadingMember, Reading['kind']>> = {
  power: 'power',
  energy: 'energy',
  samples: 'samples',
  current: 'current',
  apparentPower: 'apparent-power',
  declared: 'declared',
  thermal: 'thermal',
}
const TARIFF_KINDS: Readonly<Record<TariffMember, Tariff['kind']>> = {
  flat: 'flat',
  block: 'block',
  timeOfUse: 'time-of-use',
  twoPart: 'two-part',
}

const withKind = (kinds: Readonly<Record<string, string>>) => (member: string, value: unknown) => ({
  kind: kinds[member],
  ...(value as object),
})
const bare = (_member: string, value: unknown) => value

/**
 * Fields of EstimateInput whose type is a @oneOf input, and what their one member becomes in the shape that REST
 * reads and householdSchema checks: a `kind` beside its figures, or the bare figure or range.
 */
export const ONE_OF: Readonly<Record<string, (member: string, value: unknown) => unknown>> = {
  reading: withKind(READING_KINDS),
  tariff: withKind(TARIFF_KINDS),
  components: withKind(TARIFF_KINDS),
  tariffs: (member, value) => (member === 'code' ? value : withKind(TARIFF_KINDS)(member, value)),
  hoursPerWeek: bare,
  powerFactor: bare,
  ownership: bare,
  persistence: bare,
  ownDrawW: bare,
  newDrawW: bare,
}
