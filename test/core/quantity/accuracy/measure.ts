import { writeFileSync } from 'node:fs'
import type { Interval } from '../../../../src/core/quantity/intervalOfSum.ts'
import { compare, drawnIntervals, type OfHousehold } from './comparison.ts'
import { IN_SUITE } from './inSuite.ts'
import { randomRecipe } from './randomRecipe.ts'

/**
 * Prints the errors of so many random households against the oracle; fails where one exceeds what README.md claims.
 * `npm run test:accuracy -- --write` writes what the oracle draws for the households of the suite, and measures nothing.
 */
const print = (line: string) => process.stdout.write(`${line}\n`)

function write(): void {
  const drawn: Record<number, OfHousehold<Interval>> = {}
  for (const index of IN_SUITE) drawn[index] = drawnIntervals(randomRecipe(index), index)
  writeFileSync(new URL('drawn.json', import.meta.url), `${JSON.stringify(drawn, null, 2)}\n`)
}

function measure(households: number): void {
  const start = process.cpuUsage()
  const all = Array.from({ length: households }, (_, index) => index).flatMap((index) => {
    const recipe = randomRecipe(index)
    const { total, first } = compare(recipe, drawnIntervals(recipe, index))
    const about = `household ${index}, ${recipe.devices.length} devices, coverage ${recipe.coverage}`
    return [
      { ...total, about: `${about}, total` },
      { ...first, about: `${about}, first device` },
    ]
  })
  const { user, system } = process.cpuUsage(start)
  const percent = (share: number) => `${(100 * share).toFixed(3)} %`
  for (const figure of ['low', 'high', 'mean'] as const) {
    const sorted = all.toSorted((a, b) => a[figure] - b[figure])
    const at = (p: number) => percent(sorted[Math.ceil(p * sorted.length) - 1]![figure])
    print(
      `${figure}: median ${at(0.5)}, 99th percentile ${at(0.99)}, worst ${at(1)} (${sorted.at(-1)!.about})`,
    )
  }
  print(`${households} households in ${((user + system) / 1e6).toFixed(0)} s of CPU time`)
  if (all.some(({ low, high, mean }) => low > 0.01 || high > 0.01 || mean > 0.003)) process.exitCode = 1
}

const [argument = '300'] = process.argv.slice(2)
if (argument === '--write') write()
else measure(Number(argument))
