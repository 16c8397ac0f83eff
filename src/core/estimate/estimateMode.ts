import type { CategoryMode } from '../catalogue/category.ts'
import { drawDistribution } from '../catalogue/drawDistribution.ts'
import { drawFor } from '../catalogue/drawFor.ts'
import type { DeviceMode } from '../inventory/household.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { exact } from '../quantity/exact.ts'
import { multiplyTerm, scaleTerm, type Term } from '../quantity/term.ts'
import { triangular } from '../quantity/triangular.ts'
import type { PowerOfReading } from '../readings/powerModel.ts'
import { powerOfReading } from '../readings/powerOfReading.ts'
import { sentencesOf } from './sentences.ts'
import type { ModeEstimate, Warning } from './estimate.ts'
import type { ResolvedDevice, ResolvedHousehold } from './resolveHousehold.ts'

/** One mode of one device as terms that can be summed: everything that stands behind a ModeEstimate. */
export interface ModeTerms {
  readonly mode: ModeEstimate['mode']
  /** Real power of all of the quantity, W. */
  readonly power: Term
  readonly apparentPower: Term | null
  readonly hoursPerWeek: Distribution
  readonly hoursFrom: ModeEstimate['hoursFrom']
  /** kWh/yr */
  readonly energy: Term
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
  const power = given.reading
    ? readPower(
        powerOfReading(given.reading, { ...household.readings, powerFactor: resolved.category.powerFactor }),
        given,
        resolved,
      )
    : typicalPower(known!, resolved)
  const hoursPerWeek = hoursOf(given.hoursPerWeek ?? known!.defaultHoursPerWeek)
  return {
    mode: given.mode,
    ...power,
    hoursPerWeek,
    hoursFrom: given.hoursPerWeek === undefined ? 'catalogue' : 'request',
    energy: multiplyTerm(scaleTerm(power.power, household.used.weeksPerYear / 1000), hoursPerWeek),
  }
}

const hoursOf = (hours: NonNullable<DeviceMode['hoursPerWeek']>): Distribution =>
  typeof hours === 'number' ? exact(hours) : triangular(hours)

type PowerPart = Pick<
  ModeTerms,
  'power' | 'apparentPower' | 'confidence' | 'origin' | 'sampleData' | 'warnings'
>

/** One reading stands for all of the quantity: n times it. */
function readPower(read: PowerOfReading, given: DeviceMode, { quantity }: ResolvedDevice): PowerPart {
  return {
    power: scaleTerm(read.power, quantity),
    apparentPower: read.apparentPower ? scaleTerm(read.apparentPower, quantity) : null,
    confidence: read.flag,
    origin: {
      kind: 'reading',
      detail: given.reading!.kind,
      explanation: read.explanation + sentencesOf.behind(quantity),
    },
    sampleData: false,
    warnings: read.warnings,
  }
}

/** A typical draw: each of the quantity is an independent draw. */
function typicalPower(known: CategoryMode, { device, category, quantity }: ResolvedDevice): PowerPart {
  const draw = drawFor(known, device.year)
  return {
    power: { coefficient: 1, factors: [drawDistribution(draw, quantity)] },
    apparentPower: null,
    confidence: 'assumed',
    origin: {
      kind: 'catalogue',
      detail: draw.provenance,
      explanation: sentencesOf.typical(category.name, known.mode, draw, device.year, quantity),
    },
    sampleData: draw.provenance === 'sample',
    warnings: sentencesOf.yearWarnings(known.mode, draw, device.year),
  }
}
