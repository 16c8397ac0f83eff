/**
 * The whole gate: `npm run check`. Runs every step to its end, names each, and shows all failures last.
 * `npm run check -- types lint` runs those steps alone, `npm run check -- --without tests` all but those named.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type Outcome, runStep } from './runStep.ts'
import { PREPARATION, STEPS, type Step } from './steps.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

function chosenSteps(args: readonly string[]): readonly Step[] {
  const without = args[0] === '--without'
  const names = without ? args.slice(1) : args
  const unknown = names.filter((name) => !STEPS.some((step) => step.name === name))
  if (unknown.length > 0 || (without && names.length === 0))
    throw new Error(
      `No such step: ${unknown.join(', ')}. There are: ${STEPS.map(({ name }) => name).join(', ')}.`,
    )
  if (names.length === 0) return STEPS
  return STEPS.filter(({ name }) => names.includes(name) !== without)
}

/** One line for the step, and below it what it tells. */
function describe({ holds, tells }: Step, { name, passed, seconds, output }: Outcome): string {
  const time = `${seconds.toFixed(1)} s`.padStart(8)
  const told = passed && tells ? (output.match(tells) ?? []) : []
  const head = `${passed ? 'ok    ' : 'FAILED'} ${name.padEnd(10)} ${time}  ${holds}`
  return [head, ...told.map((line) => `${' '.repeat(27)}${line.trim()}`)].join('\n')
}

async function runAll(steps: readonly Step[]): Promise<Outcome[]> {
  const outcomes: Outcome[] = []
  for (const step of steps) {
    const outcome = await runStep(step, root)
    outcomes.push(outcome)
    console.log(describe(step, outcome))
  }
  return outcomes
}

const outcomes = await runAll([PREPARATION, ...chosenSteps(process.argv.slice(2))])
const failed = outcomes.filter(({ passed }) => !passed)
for (const { name, output } of failed) console.log(`\n======== ${name} ========\n${output}`)

mkdirSync(`${root}/reports`, { recursive: true })
const summary = { passed: outcomes.length - failed.length, failed: failed.length }
writeFileSync(
  `${root}/reports/check.json`,
  `${JSON.stringify({ ...summary, failedSteps: failed.map(({ name }) => name) })}\n`,
)
console.log(
  failed.length > 0
    ? `\nThe gate is shut: ${failed.map(({ name }) => name).join(', ')}.`
    : '\nThe gate is open.',
)
process.exitCode = failed.length > 0 ? 1 : 0
