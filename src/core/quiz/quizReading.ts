import type { GivenAccuracy, Reading } from '../readings/reading.ts'

/** The figures that the quiz can ask for, with their units as meters show them. */
export const FIGURE_UNITS = {
  watts: 'W',
  kilowattHours: 'kWh',
  durationHours: 'h',
  voltAmperes: 'VA',
  amperes: 'A',
} as const
export type QuizFigure = keyof typeof FIGURE_UNITS

/** The kinds of reading that somebody without training can take, and the figures of each. */
export const QUIZ_READINGS = {
  power: ['watts'],
  energy: ['kilowattHours', 'durationHours'],
  'apparent-power': ['voltAmperes'],
  current: ['amperes'],
} as const satisfies Partial<Record<Reading['kind'], readonly QuizFigure[]>>
export type QuizReadingKind = keyof typeof QUIZ_READINGS
export const QUIZ_READING_KINDS = Object.keys(QUIZ_READINGS) as readonly QuizReadingKind[]

/** What somebody read, in the meter's own units. Apparent power stays apparent power, and current stays current. */
export type QuizReading =
  | { readonly kind: 'power'; readonly watts: number }
  | { readonly kind: 'energy'; readonly kilowattHours: number; readonly durationHours: number }
  | { readonly kind: 'apparent-power'; readonly voltAmperes: number }
  | { readonly kind: 'current'; readonly amperes: number }

/** Nobody is asked for the manual of the meter, so its class stands for it. */
const METER: GivenAccuracy = { preset: 'plug-in-wattmeter' }

/** The reading as an estimate takes it. */
export function readingOf(reading: QuizReading): Reading {
  if (reading.kind !== 'energy') return { ...reading, accuracy: METER }
  const { kind, kilowattHours, durationHours } = reading
  return { kind, wattHours: kilowattHours * 1000, durationHours, accuracy: METER }
}
