import { describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import { checkHousehold } from '../../../src/core/inventory/checkHousehold.ts'
import { householdOfAnswers } from '../../../src/core/quiz/householdOfAnswers.ts'
import type { QuizAnswer } from '../../../src/core/quiz/quizAnswers.ts'
import { resultOfAnswers } from '../../../src/core/quiz/resultOfAnswers.ts'
import { isAlwaysOn } from '../../../src/core/quiz/askedModes.ts'
import { writeQuestion } from '../../../src/core/quiz/writeQuestion.ts'
import { readSeed } from '../../../src/readSeed.ts'

const seed = await readSeed()
const settings = settingsOf(readConfig({}), seed)
const catalogue = catalogueOf(1, seed.categories)
const words = { spoken: seed.languages.get('en')!, catalogueLanguage: 'en' }

const householdOf = (answers: readonly QuizAnswer[]) =>
  householdOfAnswers(Object.freeze({ catalogueRevision: 1, answers }), catalogue, words)
const resultOf = (answers: readonly QuizAnswer[]) => {
  const household = householdOf(answers)
  return resultOfAnswers(household, estimate(household, catalogue, settings), catalogue, words)
}
const everything = seed.categories.map(({ code }) => ({ category: code, count: 1 }))

describe('the household of answers', () => {
  test('leaves out what was counted as none, and names a device by the place of its answer', () => {
    const { devices } = householdOf([
      { category: 'router', count: 0 },
      { category: 'television', count: 2, year: 2016 },
    ])
    expect(devices).toEqual([
      {
        id: 'answer-2',
        label: 'Television without internet',
        category: 'television',
        quantity: 2,
        year: 2016,
      },
    ])
  })

  test.each([
    [{ kind: 'power', watts: 3 } as const, { kind: 'power', watts: 3 }],
    [{ kind: 'apparent-power', voltAmperes: 7 } as const, { kind: 'apparent-power', voltAmperes: 7 }],
    [{ kind: 'current', amperes: 0.03 } as const, { kind: 'current', amperes: 0.03 }],
    [
      { kind: 'energy', kilowattHours: 0.05, durationHours: 24 } as const,
      { kind: 'energy', wattHours: 50, durationHours: 24 },
    ],
  ])('a reading of %j stays what it is', (reading, expected) => {
    const [device] = householdOf([{ category: 'television', count: 1, hours: 'rarely', reading }]).devices
    expect(device?.modes).toEqual([
      {
        mode: 'standby',
        hoursPerWeek: { low: 0, typical: 2, high: 7 },
        reading: { ...expected, accuracy: { preset: 'plug-in-wattmeter' } },
      },
    ])
  })

  test('a reading is of the mode that most hours fall in, or of the one that was named', () => {
    const reading = { kind: 'power', watts: 3 } as const
    const modesWithReading = (answer: Partial<QuizAnswer>) =>
      householdOf([{ category: 'smart-television', count: 1, reading, ...answer }])
        .devices[0]!.modes!.filter((mode) => mode.reading)
        .map(({ mode }) => mode)
    expect(modesWithReading({})).toEqual(['networked-standby'])
    expect(modesWithReading({ readingMode: 'standby' })).toEqual(['standby'])
  })

  test('of every kind of device, every choice and every mode is a household that can be estimated', () => {
    for (const category of seed.categories) {
      const { hours, readingModes } = writeQuestion(category, words)
      const answers = hours.flatMap(({ choice }) => [
        { category: category.code, count: 1, hours: choice },
        ...readingModes.map((readingMode) => ({
          category: category.code,
          count: 3,
          hours: choice,
          reading: { kind: 'apparent-power', voltAmperes: 4 } as const,
          readingMode,
        })),
      ])
      expect(checkHousehold(householdOf(answers), catalogue, settings)).toEqual([])
    }
  })
})

describe('what follows from answers', () => {
  test('what must stay powered is never worth switching off, though it draws most, and is listed with its reason', () => {
    const { worthDoing, mustStayOn } = resultOf(everything)
    const kept = seed.categories.filter(({ keepPowered }) => keepPowered !== null).map(({ code }) => code)
    expect(worthDoing).toHaveLength(3)
    for (const { category } of worthDoing) expect(kept).not.toContain(category)
    expect(mustStayOn.map(({ category }) => category).sort()).toEqual([...kept].sort())
    expect(mustStayOn.find(({ category }) => category === 'freezer')).toMatchObject({
      reason: 'refrigeration',
      reasonText: 'It keeps food or medicine cold.',
    })
  })

  test('what is worth doing is what most energy goes into, largest first', () => {
    const { worthDoing, estimate: whole } = resultOf(everything)
    const largest = whole.devices
      .filter(({ keepPowered }) => keepPowered === null)
      .map(({ energyKwhPerYear }) => energyKwhPerYear.expected)
      .sort((one, other) => other - one)
    expect(worthDoing.map(({ energyKwhPerYear }) => energyKwhPerYear.expected)).toEqual(largest.slice(0, 3))
  })

  test('a typical figure is to be read first, a measured one is not', () => {
    const reading = { kind: 'power', watts: 30 } as const
    const [measured, typical] = resultOf([
      { category: 'television', count: 1, reading },
      { category: 'soundbar', count: 1 },
    ]).worthDoing
    expect([measured!.confidence, measured!.advice.includes(words.spoken.texts.readFirst)]).toEqual([
      'measured',
      false,
    ])
    expect([typical!.confidence, typical!.advice.includes(words.spoken.texts.readFirst)]).toEqual([
      'assumed',
      true,
    ])
  })

  test('nothing that draws nothing is worth doing', () => {
    const reading = { kind: 'energy', kilowattHours: 0, durationHours: 24 } as const
    const { worthDoing } = resultOf([{ category: 'router', count: 1, reading }])
    expect(worthDoing).toEqual([])
  })

  test('hours are asked of everything but what must stay powered or is never off', () => {
    for (const category of seed.categories) {
      const hours = category.modes.reduce((sum, mode) => sum + mode.defaultHoursPerWeek, 0)
      expect(isAlwaysOn(category)).toBe(category.keepPowered !== null || hours === 168)
    }
  })
})
