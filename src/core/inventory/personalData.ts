import type { Fault } from '../fault.ts'

/** Names of fields that would hold who lives there or where; in any spelling, without regard to letters' size and - or _. */
const PERSONAL_FIELDS =
  /^(first|last|full|sur|family|given|middle|customer|client|resident|tenant|owner|occupant|contact|household)?names?$|address|street|housenumber|^post(al)?code$|^zip(code)?$|^city$|^town$|mail|phone|mobile|birth|passport|^iban$|latitude|longitude|coordinates/

/** What in a text looks like a way to a person. */
const PERSONAL_TEXTS: readonly (readonly [RegExp, string])[] = [
  [/[^\s@]+@[^\s@]+\.[a-z]{2,}/i, 'an e-mail address'],
  [/(?:\+|\b00)\d[\d\s().-]{6,}\d|\b0\d{2,4}[\s/.-]\d{3,}[\s.-]?\d{2,}/, 'a telephone number'],
  [
    /\b\d{1,5}[a-z]?,?\s+(?:\p{L}+\s+){0,3}(?:street|road|avenue|lane|drive|court|boulevard|terrace|crescent)\b/iu,
    'a street address',
  ],
  [/\p{L}(?:stra(?:ß|ss)e|weg|gasse|allee)\s+\d{1,4}[a-z]?\b/iu, 'a street address'],
  [/\b(?:Mr|Mrs|Ms|Miss|Dr|Herr|Frau)\.?\s+\p{Lu}\p{Ll}+/u, "a person's name"],
]

/** Longer texts and deeper nests are refused by their shape; what lies beyond is not looked at, so that it costs nothing. */
const LONGEST = 2_000
const DEEPEST = 10
/** Its lines, taxes and components have names of their own. */
const NOT_LOOKED_AT = '/tariff'

/**
 * Fields and texts of an inventory that look like who lives there or where. The service keeps neither: what it never had
 * it can't lose, and none of its sums needs it. Patterns, so they miss what is written another way; the answer to that is
 * to use a reference of one's own, as the message says.
 */
export function personalDataFaults(raw: unknown, pointer = '', depth = 0): Fault[] {
  if (typeof raw === 'string') return textFaults(raw.slice(0, LONGEST), pointer)
  if (typeof raw !== 'object' || raw === null || depth > DEEPEST || pointer === NOT_LOOKED_AT) return []
  return Object.entries(raw).flatMap(([name, value]) => {
    const inside = `${pointer}/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`
    const isPersonal = !Array.isArray(raw) && PERSONAL_FIELDS.test(name.toLowerCase().replace(/[-_ ]/g, ''))
    return isPersonal ? [fieldFault(inside, name)] : personalDataFaults(value, inside, depth + 1)
  })
}

const WHAT_TO_DO =
  'Names and addresses are not kept here, so that they cannot be lost here: keep them on your side, under your own reference.'

const fieldFault = (pointer: string, name: string): Fault => ({
  pointer,
  code: 'personal-data',
  message: `"${name.slice(0, 100)}" looks like a field for a name, an address or the like. ${WHAT_TO_DO}`,
})

function textFaults(text: string, pointer: string): Fault[] {
  const found = PERSONAL_TEXTS.find(([pattern]) => pattern.test(text))
  if (!found) return []
  return [{ pointer, code: 'personal-data', message: `This text seems to hold ${found[1]}. ${WHAT_TO_DO}` }]
}
