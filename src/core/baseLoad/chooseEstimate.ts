import { FaultyInput } from '../fault.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import type { ChosenEstimate, EstimatorResult } from './baseLoadEvaluation.ts'
import type { DayFigure } from './dayFigure.ts'
import { ESTIMATOR_WORDS } from './estimatorWords.ts'
import { type Choosable, type DayFigures, type Estimator, ESTIMATORS, LEAST_DAYS } from './estimators.ts'
import type { LocalDay, NightWindow } from './localDays.ts'

interface Asked {
  readonly coverage: number
  readonly estimator: Choosable | undefined
  readonly night: NightWindow
}
interface Home {
  readonly meanW: number
  readonly hoursPerYear: number
  readonly days: readonly LocalDay[]
}

export interface Choice {
  readonly figure: DayFigure
  readonly chosen: ChosenEstimate
  readonly estimators: readonly EstimatorResult[]
}

/**
 * All estimators side by side, and one of them chosen: what the caller asks for, else the mean of daily minima, or with
 * generation the night window's mean.
 * @throws FaultyInput too-few-days
 */
export function chooseEstimate(
  from: DayFigures & { readonly generation: boolean },
  asked: Asked,
  home: Home,
): Choice {
  const name = asked.estimator ?? (from.generation ? 'night-window-mean' : 'mean-of-daily-minima')
  const figure = from.figures[name]
  const days = figure?.days ?? Math.min(1, home.days.length)
  if (!figure || days < LEAST_DAYS) throw new FaultyInput([tooFewDays(name, days)])
  return {
    figure,
    chosen: describeChoice(name, figure, from.generation, asked, home),
    estimators: ESTIMATORS.map((each) => resultOf(each, from, asked)),
  }
}

const tooFewDays = (name: Choosable, days: number) => ({
  pointer: '',
  code: 'too-few-days',
  message: `"${name}" rests on ${days} whole days at home; at least ${LEAST_DAYS} are needed. Send a longer period: four weeks or more, better a year.`,
})

const endsOf = (figure: DayFigure, coverage: number) => ({
  low: figure.quantile((1 - coverage) / 2),
  high: figure.quantile((1 + coverage) / 2),
})

function resultOf(
  estimator: Estimator,
  { minimumHourW, figures, generation }: DayFigures & { readonly generation: boolean },
  { coverage, night }: Asked,
): EstimatorResult {
  const definition = ESTIMATOR_WORDS[estimator].definition(night)
  if (estimator === 'minimum-hour') {
    const reason = minimumHourW === null ? whyNot(generation) : null
    const powerW = minimumHourW === null ? null : significant(minimumHourW)
    return { estimator, definition, powerW, low: null, high: null, days: powerW === null ? 0 : 1, reason }
  }
  const figure = figures[estimator]
  if (!figure)
    return { estimator, definition, powerW: null, low: null, high: null, days: 0, reason: whyNot(generation) }
  const { low, high } = endsOf(figure, coverage)
  return {
    estimator,
    definition,
    powerW: significant(figure.watts),
    low: significant(low),
    high: significant(high),
    days: figure.days,
    reason: null,
  }
}

const whyNot = (generation: boolean) =>
  generation
    ? 'It needs readings of the day, and generation behind the meter hides use then.'
    : 'The data has too few whole hours or days for it.'

function describeChoice(
  name: Choosable,
  figure: DayFigure,
  generation: boolean,
  { coverage, estimator, night }: Asked,
  { meanW, hoursPerYear }: Home,
): ChosenEstimate {
  const { definition, why, formula, source } = ESTIMATOR_WORDS[name]
  const powerW = { expected: figure.watts, ...endsOf(figure, coverage) }
  const scale = hoursPerYear / 1000
  return {
    estimator: name,
    powerW: significantInterval(powerW),
    energyKwhPerYear: significantInterval({
      expected: powerW.expected * scale,
      low: powerW.low * scale,
      high: powerW.high * scale,
    }),
    shareOfUse: generation || meanW <= 0 ? null : significant(figure.watts / meanW),
    days: figure.days,
    effectiveDays: significant(figure.effectiveDays),
    degreesOfFreedom: significant(figure.degreesOfFreedom),
    explanation: [
      `${estimator === undefined ? 'Chosen by the service' : 'Chosen in the request'}: ${lowerFirst(definition(night))}`,
      why,
      `It rests on ${figure.days} days; since neighbouring days are alike, they tell as much as ${figure.effectiveDays.toFixed(1)} independent ones.`,
      `The base load is between ${short(powerW.low)} W and ${short(powerW.high)} W with a probability of ${significant(100 * coverage)} %, as far as the scatter between these days tells. The meter’s own error and seasons that were not seen are not in it.`,
    ].join(' '),
    formula,
    source,
  }
}

/** Three digits, as people read them. */
const short = (watts: number) => Number(watts.toPrecision(3))
const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)
