import { DomainError } from '../core/fault.ts'
import type { NamedEmissionFactor } from '../core/emissions/emissionFactor.ts'
import type { Deps } from './deps.ts'

/** @throws DomainError unknown-emission-factor, naming the codes that there are */
export function readEmissionFactor(
  { settings: { emissionFactors } }: Deps,
  code: string,
): NamedEmissionFactor {
  const found = emissionFactors.get(code)
  if (found) return found
  const known = [...emissionFactors.keys()]
  throw new DomainError(
    'unknown-emission-factor',
    `There is no emission factor "${code}". Known are: ${known.join(', ')}.`,
    { known },
  )
}
