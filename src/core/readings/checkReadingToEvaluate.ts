import type { Catalogue } from '../catalogue/catalogue.ts'
import { findCategory } from '../catalogue/findCategory.ts'
import type { Fault } from '../fault.ts'
import { checkReading, unknownCategory } from '../inventory/checkDevice.ts'
import { duplicateIds } from '../inventory/checkHousehold.ts'
import { isObject, list, text } from '../inventory/lenient.ts'

/** Longer lists are refused by their shape; what lies beyond is not looked at, so that it costs nothing. */
const MOST_CHECKED = 500

/**
 * The trade's rules on a reading to be evaluated, checked on whatever of the raw input can be read: its category exists,
 * meter ids are unique, the meter that it names is there, its accuracy is not given twice.
 */
export function checkReadingToEvaluate(raw: unknown, catalogue: Catalogue): Fault[] {
  if (!isObject(raw)) return []
  const category = text(raw['category'])
  const ids = list(raw['meters'])
    .slice(0, MOST_CHECKED)
    .map((meter) => text(meter['id']))
  return [
    ...(category && !findCategory(catalogue, category) ? [unknownCategory(catalogue, category, '')] : []),
    ...duplicateIds('/meters', ids),
    ...checkReading(raw['reading'], '/reading', new Set(ids)),
  ]
}
