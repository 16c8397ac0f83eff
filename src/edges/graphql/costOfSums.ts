import { DRAWS } from '../../schemas/estimateRequest.ts'
import type { EstimateInput } from './inputs/estimate.ts'
import { COST_OF_ONE_DEVICE, DRAWS_PER_FIELD, EXPECTED_LENGTH } from './limits.ts'

type Input = Pick<typeof EstimateInput.$inferInput, 'devices' | 'method' | 'draws'>

/**
 * Cost of the sums behind an estimate, in fields. A device that leaves its modes to the catalogue counts as having the most
 * that there can be; more draws than a request is allowed count as what is allowed, since they are refused.
 */
export function costOfSums({ devices, method, draws }: Input): number {
  const convolved = devices.length * COST_OF_ONE_DEVICE
  if (method !== 'monte-carlo') return convolved
  const modes = devices.reduce((sum, device) => sum + (device.modes?.length ?? EXPECTED_LENGTH.modes), 0)
  const drawn = Math.min(modes * (draws ?? DRAWS.most), DRAWS.together)
  return Math.max(convolved, drawn / DRAWS_PER_FIELD)
}
