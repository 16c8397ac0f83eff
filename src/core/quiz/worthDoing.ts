import type { Catalogue } from '../catalogue/catalogue.ts'
import type { DeviceEstimate } from '../estimate/estimate.ts'
import { labelOf } from './labelOf.ts'
import type { Words } from './quizLanguage.ts'
import type { WorthDoing } from './quizResult.ts'

const AT_MOST = 3

/**
 * What is most worth doing or looking at: the devices with the largest expected energy among those that may be
 * switched off. What must stay powered is never among them.
 */
export function worthDoing(
  devices: readonly DeviceEstimate[],
  catalogue: Catalogue,
  words: Words,
): readonly WorthDoing[] {
  return devices
    .filter(({ keepPowered, energyKwhPerYear }) => keepPowered === null && energyKwhPerYear.expected > 0)
    .sort((one, other) => other.energyKwhPerYear.expected - one.energyKwhPerYear.expected)
    .slice(0, AT_MOST)
    .map((device) => ({
      deviceId: device.id,
      category: device.category,
      ...labelOf(catalogue.categories.get(device.category)!, words),
      confidence: device.confidence,
      energyKwhPerYear: device.energyKwhPerYear,
      costPerYear: device.costPerYear,
      shareOfTotal: device.shareOfTotal,
      advice: adviceFor(device, words),
    }))
}

/** What can be done about the mode that most of the energy goes into; a reading first, where nothing was read. */
function adviceFor({ modes, confidence }: DeviceEstimate, { spoken }: Words): string {
  const [largest] = [...modes].sort(
    (one, other) => other.energyKwhPerYear.expected - one.energyKwhPerYear.expected,
  )
  const { advice } = spoken.modes[largest!.mode]
  return confidence === 'assumed' ? `${advice} ${spoken.texts.readFirst}` : advice
}
