import type { CautionPlace, KeptCaution } from '../core/cautions/caution.ts'
import type { Deps } from './deps.ts'

/** The cautions that the service attaches, all or those of one kind of answer, in the order in which they are shown. */
export function listCautions({ settings }: Deps, appliesTo?: CautionPlace): readonly KeptCaution[] {
  if (appliesTo === undefined) return settings.cautions
  return settings.cautions.filter((caution) => caution.appliesTo.includes(appliesTo))
}
