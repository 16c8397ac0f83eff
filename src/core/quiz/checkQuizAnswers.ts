import type { Catalogue } from '../catalogue/catalogue.ts'
import type { Category, Mode } from '../catalogue/category.ts'
import type { EstimateSettings } from '../estimate/settings.ts'
import type { Fault } from '../fault.ts'
import { unknownCategory } from '../inventory/checkDevice.ts'
import { checkHousehold } from '../inventory/checkHousehold.ts'
import { isObject, list, text } from '../inventory/lenient.ts'
import { askedModes, isAlwaysOn } from './askedModes.ts'
import { USUAL } from './hoursChoice.ts'

/** Longer lists are refused by their shape. */
const MOST_CHECKED = 500

/**
 * The rules on answers, checked on whatever of the raw input can be read: the quiz asks for the category, for hours and
 * for readings of that mode; something was counted; tariff and factor are known.
 */
export function checkQuizAnswers(raw: unknown, catalogue: Catalogue, settings: EstimateSettings): Fault[] {
  if (!isObject(raw)) return []
  const answers = list(raw['answers']).slice(0, MOST_CHECKED)
  const { tariffCode, emissionFactorCode } = raw
  return [
    ...checkHousehold({ tariffCode, emissionFactorCode }, catalogue, settings),
    ...(answers.length > 0 && answers.every(({ count }) => count === 0) ? [NOTHING_COUNTED] : []),
    ...answers.flatMap((answer, i) => checkAnswer(answer, `/answers/${i}`, catalogue)),
  ]
}

const NOTHING_COUNTED: Fault = {
  pointer: '/answers',
  code: 'nothing-counted',
  message: 'Every count is 0, so there is nothing to estimate. Count at least one device.',
}

function checkAnswer(answer: Record<string, unknown>, base: string, catalogue: Catalogue): Fault[] {
  const code = text(answer['category'])
  if (code === undefined) return []
  const category = catalogue.categories.get(code)
  if (!category || category.retired) return [unknownCategory(catalogue, code, base)]
  return [...checkHours(answer, base, category), ...checkReading(answer, base, category)]
}

function checkHours({ hours }: Record<string, unknown>, base: string, category: Category): Fault[] {
  if (hours === undefined || hours === USUAL || !isAlwaysOn(category)) return []
  const message = `Hours are not asked of ${category.code}, which is on day and night. Leave hours out.`
  return [{ pointer: `${base}/hours`, code: 'hours-not-asked', message }]
}

function checkReading(answer: Record<string, unknown>, base: string, category: Category): Fault[] {
  const mode = text(answer['readingMode'])
  if (mode === undefined) return []
  const pointer = `${base}/readingMode`
  if (answer['reading'] === undefined)
    return [{ pointer, code: 'without-reading', message: 'Give the reading, too, or leave readingMode out.' }]
  const modes = askedModes(category).map((asked) => asked.mode)
  if (modes.includes(mode as Mode)) return []
  const message = `A reading of ${category.code} can be in: ${modes.join(', ')}. Choose one of these.`
  return [{ pointer, code: 'mode-not-asked', message }]
}
