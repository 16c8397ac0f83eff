import { accuracyOf } from './accuracyOf.ts'
import { USUAL_EMISSIVITY } from './heatLoss.ts'
import type { ReadingContext } from './powerModel.ts'
import type { CurrentReading, MeteredReading, Reading, ThermalReading } from './reading.ts'

/** What was not read and had to be assumed, a sentence each; empty where nothing was. */
export function assumptionsOf(reading: Reading, context: ReadingContext): string[] {
  switch (reading.kind) {
    case 'declared':
      return ['The device draws at least half of what its label declares (the service’s own assumption).']
    case 'thermal':
      return ofThermal(reading)
    case 'current':
      return [
        ...ofVoltage(reading, context),
        ...ofPowerFactor(reading, context),
        ...ofMeter(reading, context),
      ]
    case 'apparent-power':
      return [...ofPowerFactor(reading, context), ...ofMeter(reading, context)]
    case 'power':
    case 'energy':
    case 'samples':
      return ofMeter(reading, context)
  }
}

const ofVoltage = ({ volts }: CurrentReading, { supply }: ReadingContext) =>
  volts === undefined ? [`The voltage is ${supply.volts} V +-${supply.tolerancePercent} %.`] : []

function ofPowerFactor(
  { powerFactor }: { readonly powerFactor?: unknown },
  { powerFactor: usual, usual: draw }: ReadingContext,
): string[] {
  if (powerFactor !== undefined) return []
  const whose = draw
    ? `as is usual for ${draw.name} in a low-power mode`
    : 'wide enough for nearly any device, since no category is given (the service’s own assumption)'
  return [`The power factor is between ${usual.low} and ${usual.high}, ${whose}.`]
}

function ofMeter(reading: MeteredReading, context: ReadingContext): string[] {
  const { limits, preset, unit } = accuracyOf(reading, context)
  if (!limits) return ['The meter is exact.']
  if (!preset) return []
  const { percentOfReading, counts, resolution } = limits
  return [
    `The meter is as good as its class, ${preset.name}: +-(${percentOfReading} % + ${counts} x ${resolution} ${unit}); ${preset.source}.`,
  ]
}

function ofThermal({ emissivity, heightM, orientation }: ThermalReading): string[] {
  const assumed = [
    'The air is still, nothing stands close by, and walls and air of the room are equally warm.',
    'The device gives off its heat by the surface that is given, and by no other.',
  ]
  if (emissivity === undefined)
    assumed.push(
      `The emissivity is ${USUAL_EMISSIVITY}, that of plastic and painted metal (common practice, no source).`,
    )
  if (heightM === undefined) assumed.push('The surface is a square.')
  else if (orientation !== 'vertical')
    assumed.push('The surface is a rectangle, and heightM is the length of one of its sides.')
  return assumed
}
