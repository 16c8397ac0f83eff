import type { Caution, CautionList, CautionPlace } from './caution.ts'

/** The cautions that go with one kind of answer, as people read them: with their source, without its mark. */
export function cautionsFor(cautions: CautionList, place: CautionPlace): readonly Caution[] {
  return cautions
    .filter(({ appliesTo }) => appliesTo.includes(place))
    .map(({ code, message, source }) => ({ code, message, source }))
}

/**
 * What is said wherever readings or switching off are suggested. Marks: V and V2 as read in a stored copy of the
 * source (verified, second-hand); "common practice, no source" is what the trade says without a document.
 */
export const CAUTIONS: Readonly<Record<string, Caution>> = Object.fromEntries(
  [
    caution(
      'no-open-cords-or-panels',
      'Never open a cord, plug, device or distribution panel to take a reading. Work behind covers is for licensed electricians.',
      'common practice, no source',
    ),
    caution(
      'purpose-made-splitter-only',
      'Clamp a single conductor only through a purpose-made line splitter; never separate the conductors of a cord yourself.',
      'common practice, no source',
    ),
    caution(
      'meter-category-rating',
      'Use a meter only within its measurement category: CAT II for devices on a socket, CAT III for fixed wiring, CAT IV at the service entrance.',
      'IEC 61010-2-030 measurement categories, as given in instrument makers’ manuals (V)',
    ),
    caution(
      'power-strip-load',
      'Keep the sum of the devices on a power strip below its rated load, plug it straight into a fixed outlet, and never plug one strip into another.',
      '29 CFR 1910.304(b)(4) and UL 1363 listing practice (V2)',
    ),
    caution(
      'never-switch-off',
      'Never switch off medical, alarm, life-safety or refrigeration equipment, frost protection, or network equipment that others depend on.',
      'common practice, no source',
    ),
    caution(
      'defer-to-manufacturer',
      'The manufacturer’s instructions, local codes and licensed practice come before anything this service suggests.',
      'common practice, no source',
    ),
  ].map((one) => [one.code, one]),
)

function caution(code: string, message: string, source: string): Caution {
  return { code, message, source }
}
