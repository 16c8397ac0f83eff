import { type CategoryMode, type Mode, MODES } from '../catalogue/category.ts'
import { drawDistribution } from '../catalogue/drawDistribution.ts'
import { type ChosenDraw, drawFor } from '../catalogue/drawFor.ts'
import { hasSampleFigures } from '../catalogue/labelledCategory.ts'
import type { DeviceMode } from '../inventory/household.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { exact } from '../quantity/exact.ts'
import { multiplyTerm, scaleTerm, type Term } from '../quantity/term.ts'
import { triangular } from '../quantity/triangular.ts'
import { powerOfReading } from '../readings/powerOfReading.ts'
import type { Reading } from '../readings/reading.ts'
import { usualDraw } from '../readings/usualDraw.ts'
import { sentencesOf } from './sentences.ts'
import type { ModeEstimate, Warning } from './estimate.ts'
import type { ResolvedDevice, ResolvedHousehold } from './resolveHousehold.ts'

/** One mode of one device as terms that can be summed: everything that stands behind a ModeEstimate. */
export interface ModeTerms {
  readonly mode: ModeEstimate['mode']
  /** Real power of all of the quantity, W. */
  readonly power: Term
  /** The typical draw that the power is, if it is one. */
  readonly draw: ChosenDraw | null
  readonly apparentPower: Term | null
  readonly hoursPerWeek: Distribution
  readonly hoursFrom: ModeEstimate['hoursFrom']
  /** kWh/yr */
  readonly energy: Term
  /** Hours of the week that the energy falls in; null spreads it over all of them. */
  readonly schedule: NonNullable<DeviceMode['schedule']> | null
  readonly confidence: ModeEstimate['confidence']
  readonly origin: ModeEstimate['origin']
  readonly sampleData: boolean
  readonly warnings: readonly Warning[]
}

/** The modes that count for a device: those given, or all that the catalogue knows for its category. */
export function modesOf({ device, category }: ResolvedDevice): readonly DeviceMode[] {
  return device.modes ?? category.modes.map(({ mode }) => ({ mode }))
}

/** Power and energy of one mode: of its reading where there is one, else of the catalogue's typical draw. */
export function modeTerms(
  given: DeviceMode,
  resolved: ResolvedDevice,
  household: ResolvedHousehold,
): ModeTerms {
  const known = resolved.category.modes.find(({ mode }) => mode === given.mode)
  const part = given.reading
    ? readPower(given.reading, given.mode, resolved, household)
    : typicalPower(known!, resolved)
  const hours = given.hoursPerWeek ?? known!.defaultHoursPerWeek
  const power = drawnAs(part.power, given.mode, resolved, household)
  return {
    mode: given.mode,
    power,
    draw: part.draw,
    apparentPower: part.apparentPower && drawnAs(part.apparentPower, given.mode, resolved, household),
    hoursPerWeek: hoursOf(hours),
    hoursFrom: given.hoursPerWeek === undefined ? 'catalogue' : 'request',
    energy: energyOf(power, hours, household.used.weeksPerYear),
    schedule: given.schedule ?? null,
    confidence: part.confidence,
    origin: part.origin,
    sampleData: part.sampleData || (leansOnCategory(given) && hasSampleFigures(resolved.category)),
    warnings: part.warnings,
  }
}

/** Whether a mode takes its hours, or the power factor of its reading, from the category. */
function leansOnCategory({ hoursPerWeek, reading }: DeviceMode): boolean {
  const needsPowerFactor = reading?.kind === 'current' || reading?.kind === 'apparent-power'
  return hoursPerWeek === undefined || (needsPowerFactor && reading.powerFactor === undefined)
}

type Hours = NonNullable<DeviceMode['hoursPerWeek']>
const hoursOf = (hours: Hours): Distribution => (typeof hours === 'number' ? exact(hours) : triangular(hours))

/** kWh/yr of W over hours a week. */
function energyOf(power: Term, hours: Hours, weeksPerYear: number): Term {
  const perWatt = weeksPerYear / 1000
  if (typeof hours === 'number') return scaleTerm(power, perWatt * hours)
  return multiplyTerm(scaleTerm(power, perWatt), triangular(hours))
}

/** Where sums are drawn, all terms of a mode are drawn from one stream, which no other mode has. */
function drawnAs(term: Term, mode: Mode, { place }: ResolvedDevice, { drawing }: ResolvedHousehold): Term {
  if (!drawing) return term
  return { ...term, drawn: { drawing, stream: place * MODES.length + MODES.indexOf(mode) } }
}

type PowerPart = Pick<
  ModeTerms,
  'power' | 'draw' | 'apparentPower' | 'confidence' | 'origin' | 'sampleData' | 'warnings'
>

/** One reading stands for all of the quantity: n times it. */
function readPower(
  reading: Reading,
  mode: Mode,
  { category, device, quantity }: ResolvedDevice,
  { readings }: ResolvedHousehold,
): PowerPart {
  const read = powerOfReading(reading, {
    supply: readings.supply,
    meters: readings.meters,
    presets: readings.presets,
    powerFactor: category.powerFactor,
    usual: usualDraw(category, mode, device.year),
  })
  return {
    power: scaleTerm(read.power, quantity),
    draw: null,
    apparentPower: read.apparentPower ? scaleTerm(read.apparentPower, quantity) : null,
    confidence: read.flag,
    origin: {
      kind: 'reading',
      detail: reading.kind,
      explanation: read.explanation + sentencesOf.behind(quantity),
    },
    sampleData: false,
    warnings: read.warnings,
  }
}

/** A typical draw: each of the quantity is an independent draw. */
function typicalPower(known: CategoryMode, { device, category, layer, quantity }: ResolvedDevice): PowerPart {
  const draw = drawFor(known, device.year)
  return {
    power: { coefficient: 1, factors: [drawDistribution(draw, quantity)] },
    draw,
    apparentPower: null,
    confidence: 'assumed',
    origin: {
      kind: 'catalogue',
      detail: draw.provenance,
      explanation: sentencesOf.typical(category.name, known.mode, draw, device.year, quantity, layer),
    },
    sampleData: draw.provenance === 'sample',
    warnings: sentencesOf.yearWarnings(known.mode, draw, device.year),
  }
}
