import type { Catalogue } from '../catalogue/catalogue.ts'
import type { Estimate } from '../estimate/estimate.ts'
import type { Household } from '../inventory/household.ts'
import { labelOf } from './labelOf.ts'
import type { Words } from './quizLanguage.ts'
import type { MustStayOn, QuizResult } from './quizResult.ts'
import { stayOn } from './stayOn.ts'
import { worthDoing } from './worthDoing.ts'

/** An estimate of somebody's answers, with what follows from it in their language. */
export function resultOfAnswers(
  household: Household,
  estimate: Estimate,
  catalogue: Catalogue,
  words: Words,
): QuizResult {
  const { texts, language } = words.spoken
  return {
    language,
    catalogueRevision: estimate.catalogueRevision,
    overlayRevision: estimate.overlayRevision,
    sampleData: estimate.sampleData,
    sampleDataNotice: estimate.sampleData ? texts.sampleData : null,
    household,
    estimate,
    worthDoing: worthDoing(estimate.devices, catalogue, words),
    mustStayOn: mustStayOn(estimate, catalogue, words),
    beforeSwitchingOff: texts.beforeSwitchingOff,
  }
}

const mustStayOn = ({ devices }: Estimate, catalogue: Catalogue, words: Words): readonly MustStayOn[] =>
  devices.flatMap(({ id, category, keepPowered }) =>
    keepPowered === null
      ? []
      : [
          {
            deviceId: id,
            category,
            ...labelOf(catalogue.categories.get(category)!, words),
            ...stayOn(keepPowered, words),
          },
        ],
  )
