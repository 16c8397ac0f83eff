import type { Words } from '../core/quiz/quizLanguage.ts'
import type { Deps } from './deps.ts'

/** The words of a language that the service has; of the catalogue's where it has none of that name. */
export function wordsFor({ quizLanguages: { known, catalogueLanguage } }: Deps, language: string): Words {
  return { spoken: known.get(language) ?? known.get(catalogueLanguage)!, catalogueLanguage }
}
