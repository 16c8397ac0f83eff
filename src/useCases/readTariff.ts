import { DomainError } from '../core/fault.ts'
import type { NamedTariff } from '../core/money/tariff.ts'
import type { Deps } from './deps.ts'

/** @throws DomainError unknown-tariff, naming the codes that there are */
export function readTariff({ settings: { tariffs } }: Deps, code: string): NamedTariff {
  const found = tariffs.get(code)
  if (found) return found
  const known = [...tariffs.keys()]
  throw new DomainError('unknown-tariff', `There is no tariff "${code}". Known are: ${known.join(', ')}.`, {
    known,
  })
}
