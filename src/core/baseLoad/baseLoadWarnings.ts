import { significant } from '../quantity/significant.ts'
import type { Warning } from '../estimate/estimate.ts'
import type { BaseLoadEvaluation } from './baseLoadEvaluation.ts'
import type { Conflict } from './tidyReadings.ts'

type Facts = Pick<
  BaseLoadEvaluation,
  'data' | 'chosen' | 'daysAway' | 'outages' | 'generation' | 'inventory'
> & {
  readonly conflicts: readonly Conflict[]
  readonly overlaps: readonly number[]
  readonly leftOut: number
  /** Least difference between two readings that differ, W: the meter's step, or finer. */
  readonly stepW: number | null
  readonly shareOfZeros: number
  readonly inventoryIsMore: number | null
  readonly placeWord: string
}

const warning = (code: string, message: string): Warning => ({ code, message })
const several = (places: readonly number[]) =>
  `${places.slice(0, 5).join(', ')}${places.length > 5 ? ', …' : ''}`

/** What somebody who reads the figures must know, in the order in which it matters. */
export function baseLoadWarnings(facts: Facts): Warning[] {
  return [...ofData(facts), ...ofUse(facts), ...ofInventory(facts)]
}

function ofData({ data, conflicts, overlaps, leftOut, placeWord }: Facts): Warning[] {
  const found: Warning[] = []
  if (conflicts.length > 0) {
    const [{ place, otherPlace, watts, otherWatts }] = conflicts as [Conflict]
    found.push(
      warning(
        'conflicting-readings',
        `${conflicts.length} intervals came twice with different values and were left out: the first at ${placeWord} ${place} (${significant(watts)} W) and ${otherPlace} (${significant(otherWatts)} W). Export the data again.`,
      ),
    )
  }
  if (overlaps.length > 0)
    found.push(
      warning(
        'overlapping-readings',
        `${overlaps.length} readings overlapped others in part and were left out (${placeWord} ${several(overlaps)}).`,
      ),
    )
  if (leftOut > 0)
    found.push(
      warning(
        'mixed-intervals',
        `The readings are of different lengths; ${leftOut} of them fit into no interval of ${data.intervalSeconds} s and were left out.`,
      ),
    )
  if (data.coveredShare < 0.9)
    found.push(
      warning(
        'large-gaps',
        `Only ${significant(100 * data.coveredShare)} % of the time from first to last reading is covered; the figures speak for that part alone.`,
      ),
    )
  if (data.estimated > 0)
    found.push(
      warning(
        'estimated-readings',
        `${data.estimated} readings are marked in the data as estimated, edited or questionable; they count like the others.`,
      ),
    )
  return found
}

function ofUse({ data, chosen, daysAway, outages, generation, stepW, shareOfZeros }: Facts): Warning[] {
  const found: Warning[] = []
  if (generation)
    found.push(
      warning(
        'generation-seen',
        'There is generation behind the meter, which hides use while the sun shines. Only the night window counts; in summer at high latitudes even that may be too high a hope.',
      ),
    )
  if (outages.length > 0)
    found.push(
      warning(
        'outages-suspected',
        `There are ${outages.length} runs of zero readings for an hour or longer, the first from ${outages[0]!.from} to ${outages[0]!.to}: the supply or the meter may have failed. They are left out.`,
      ),
    )
  else if (shareOfZeros > 0.05 && !generation)
    found.push(
      warning(
        'many-zero-readings',
        `${significant(100 * shareOfZeros)} % of the readings are zero: the meter’s steps are coarser than the draw, or something feeds in. Trust the night window’s mean more than minima and percentiles.`,
      ),
    )
  if (stepW !== null && stepW > 0.1 * chosen.powerW.expected)
    found.push(
      warning(
        'coarse-steps',
        `The readings come in steps of ${significant(stepW)} W, more than a tenth of the base load; minima and percentiles jump from step to step. Ask for data with more decimals, or for longer intervals.`,
      ),
    )
  if (daysAway.suspected.length > 0)
    found.push(
      warning(
        'days-away-suspected',
        `On some days hardly anything was used (first ${daysAway.suspected[0]!.from} to ${daysAway.suspected[0]!.to}): the household may have been away. They count here; name them in daysAway to leave them out.`,
      ),
    )
  if (data.days < 28)
    found.push(
      warning(
        'short-series',
        `The data covers ${data.days} days. Heating, cooling and holidays change a base load through the year; the interval does not know of seasons that were not seen.`,
      ),
    )
  return found
}

function ofInventory({ inventory, inventoryIsMore }: Facts): Warning[] {
  const found: Warning[] = []
  if (inventory?.sampleData === true)
    found.push(
      warning(
        'sample-data',
        'Typical draws of the catalogue are invented sample data; they show how the service works, not what devices draw.',
      ),
    )
  if (inventoryIsMore !== null && inventoryIsMore > 0.95)
    found.push(
      warning(
        'inventory-above-base-load',
        'The inventory draws more than the whole home does at its quietest: devices that are off at the outlet at night, too high typical draws, or wrong quantities.',
      ),
    )
  return found
}
