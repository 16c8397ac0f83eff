import Negotiator from 'negotiator'
import type { Deps } from '../useCases/deps.ts'

/**
 * Of the languages that the service has, the one that an Accept-Language header likes best (RFC 9110, 12.5.4): de-AT is
 * met with de, and of equals the language of the catalogue comes first. Where none is accepted it is that one, too: a
 * quiz in another language is more use than a refusal.
 */
export function negotiateLanguage(
  header: string | undefined,
  { quizLanguages: { known, catalogueLanguage } }: Deps,
): string {
  const available = [catalogueLanguage, ...[...known.keys()].filter((tag) => tag !== catalogueLanguage)]
  const headers = header === undefined ? {} : { 'accept-language': header }
  return new Negotiator({ headers }).language(available) ?? catalogueLanguage
}
