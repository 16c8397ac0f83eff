import { compare } from './comparison.ts'
import { randomRecipe } from './randomRecipe.ts'

/** Prints the errors of so many random households against the oracle; fails where one exceeds what README.md claims. */
const households = Number(process.argv[2] ?? 300)
const start = process.cpuUsage()
const all = Array.from({ length: households }, (_, index) => ({
  index,
  recipe: randomRecipe(index),
})).flatMap(({ index, recipe }) => {
  const { total, first } = compare(recipe, index)
  const about = `household ${index}, ${recipe.devices.length} devices, coverage ${recipe.coverage}`
  return [
    { ...total, about: `${about}, total` },
    { ...first, about: `${about}, first device` },
  ]
})
const { user, system } = process.cpuUsage(start)
const print = (line: string) => process.stdout.write(`${line}\n`)
const percent = (share: number) => `${(100 * share).toFixed(3)} %`
for (const figure of ['low', 'high', 'mean'] as const) {
  const sorted = all.toSorted((a, b) => a[figure] - b[figure])
  const at = (p: number) => percent(sorted[Math.ceil(p * sorted.length) - 1]![figure])
  print(`${figure}: median ${at(0.5)}, 99th percentile ${at(0.99)}, worst ${at(1)} (${sorted.at(-1)!.about})`)
}
print(`${households} households in ${((user + system) / 1e6).toFixed(0)} s of CPU time`)
if (all.some(({ low, high, mean }) => low > 0.01 || high > 0.01 || mean > 0.003)) process.exitCode = 1
