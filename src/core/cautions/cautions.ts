import type { Caution, CautionList, CautionPlace } from './caution.ts'

/** The cautions that go with one kind of answer, as people read them: with their source, without its mark. */
export function cautionsFor(cautions: CautionList, place: CautionPlace): readonly Caution[] {
  return cautions
    .filter(({ appliesTo }) => appliesTo.includes(place))
    .map(({ code, message, source }) => ({ code, message, source }))
}
