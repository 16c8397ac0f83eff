import type { Fault } from '../fault.ts'

const EXPORT_OR_DEMAND = /export|feed|demand|capacity/i

/**
 * A fault for a tariff that asks for what is not priced here: pay for energy that is fed into the grid, or a charge on
 * peak demand. Standby changes neither by anything that an inventory could tell, so a figure would be made up.
 */
export function notPriced(tariff: unknown, pointer: string): Fault[] {
  if (typeof tariff !== 'object' || tariff === null) return []
  const kind = 'kind' in tariff && typeof tariff.kind === 'string' ? [['kind', tariff.kind] as const] : []
  const fields = Object.keys(tariff).map((name) => [name, name] as const)
  return [...kind, ...fields]
    .filter(([, word]) => EXPORT_OR_DEMAND.test(word))
    .map(([name]) => ({
      pointer: `${pointer}/${name}`,
      code: 'not-priced',
      message:
        'Prices for what is fed into the grid and charges on peak demand are not priced here, since standby changes neither; give the prices of energy taken from the grid.',
    }))
}
