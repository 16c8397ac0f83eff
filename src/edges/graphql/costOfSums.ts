import { DRAWS } from '../../schemas/estimateRequest.ts'
import type { EstimateInput } from './inputs/estimate.ts'
import { COST_OF_ONE_DEVICE, COST_OF_WIDTHS, DRAWS_PER_FIELD, EXPECTED_LENGTH } from './limits.ts'

type Input = Pick<typeof EstimateInput.$inferInput, 'devices' | 'method' | 'draws' | 'expectedWidths'>

/**
 * Cost of the sums behind an estimate, in fields. A device that leaves its modes to the catalogue counts as having the most
 * that there can be; more draws than a request is allowed count as what is allowed, since they are refused.
 */
export const costOfSums = (input: Input): number =>
  costOfIntervals(input) + (input.expectedWidths ? input.devices.length * COST_OF_WIDTHS : 0)

function costOfIntervals({ devices, method, draws }: Input): number {
  const convolved = devices.length * COST_OF_ONE_DEVICE
  if (method !== 'monte-carlo') return convolved
  const modes = devices.reduce((sum, device) => sum + (device.modes?.length ?? EXPECTED_LENGTH.modes), 0)
  const drawn = Math.min(modes * (draws ?? DRAWS.most), DRAWS.together)
  return Math.max(convolved, drawn / DRAWS_PER_FIELD)
}
