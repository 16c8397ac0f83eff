import { resolveHousehold } from '../../../src/core/estimate/resolveHousehold.ts'
import type { ReadingContext } from '../../../src/core/readings/powerModel.ts'
import { catalogue, settings } from './estimateOf.ts'

const { readings } = resolveHousehold({ devices: [] }, catalogue, settings)

/** What the readings here are read against: the settings that the service is shipped with, no category. */
export const context: ReadingContext = {
  ...readings,
  powerFactor: { low: 0.2, typical: 0.4, high: 0.6 },
  usual: null,
}
