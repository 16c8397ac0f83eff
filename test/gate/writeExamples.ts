/**
 * Writes the example answers of the API description, and the one in the README, from what the service answers to their
 * requests over the sample catalogue. `npm run documents` runs this before it makes the documents; tests hold examples
 * and answers together.
 */
import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { format, resolveConfig } from 'prettier'
import { readConfig, settingsOf } from '../../src/config.ts'
import { REQUEST_EXAMPLES } from '../../src/edges/rest/examples.ts'
import { readSeed } from '../../src/readSeed.ts'
import { testApp } from '../helpers/testApp.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const rest = 'src/edges/rest/'
const ANSWERS = [
  {
    file: `${rest}examples.ts`,
    name: 'exampleEstimate',
    path: '/v1/estimates',
    of: ['estimateHousehold', 'smallest'],
  },
  {
    file: `${rest}readingExamples.ts`,
    name: 'exampleReadingEvaluation',
    path: '/v1/readings/evaluate',
    of: ['evaluateReading', 'clamp'],
  },
  {
    file: `${rest}baseLoadExamples.ts`,
    name: 'exampleBaseLoadEvaluation',
    path: '/v1/base-load/evaluate',
    of: ['evaluateBaseLoad', 'hourly'],
  },
  {
    file: `${rest}money/examples.ts`,
    name: 'exampleComparison',
    path: '/v1/tariff-comparisons',
    of: ['compareTariffs', 'two'],
  },
  {
    file: `${rest}limits/examples.ts`,
    name: 'exampleLimitCheck',
    path: '/v1/limits/check',
    of: ['checkAgainstLimit', 'television'],
  },
  {
    file: `${rest}population/examples.ts`,
    name: 'exampleStockEstimate',
    path: '/v1/population-estimates',
    of: ['estimatePopulation', 'stock'],
  },
  {
    file: `${rest}verification/exampleVerification.ts`,
    name: 'exampleVerification',
    path: '/v1/verifications',
    of: ['verifySavings', 'visits'],
  },
  {
    file: `${rest}savings/examples.ts`,
    name: 'exampleSavingsPlan',
    path: '/v1/savings-plans',
    of: ['planSavings', 'strip'],
  },
  {
    file: `${rest}quiz/examples.ts`,
    name: 'exampleQuizResult',
    path: '/v1/quiz/answers',
    of: ['answerQuiz', 'home'],
  },
] as const
/** Answers to GET. */
const READ = [
  {
    file: `${rest}quiz/quizExample.ts`,
    name: 'exampleQuiz',
    path: '/v1/quiz?categories=refrigerator,television',
  },
] as const

const seed = await readSeed()
const settings = settingsOf(readConfig({}), seed)
const service = await testApp({ categories: seed.categories, settings })

async function answerTo(path: string, body?: unknown): Promise<unknown> {
  const sent =
    body === undefined ? { method: 'GET' as const } : { method: 'POST' as const, payload: body as object }
  const answer = await service.app.inject({ ...sent, url: path })
  if (answer.statusCode !== 200) throw new Error(`${path} answered ${answer.statusCode}: ${answer.body}`)
  return answer.json()
}

/** The object literal between `export const name = {` and the `}` that closes it at the start of a line. */
async function replaceLiteral(file: string, name: string, value: unknown): Promise<void> {
  const text = await readFile(root + file, 'utf8')
  const literal = new RegExp(`(export const ${name} = )\\{[\\s\\S]*?^\\}`, 'm')
  if (!literal.test(text)) throw new Error(`${file} has no object literal ${name}`)
  const changed = text.replace(literal, (_, head: string) => head + JSON.stringify(value))
  const options = await resolveConfig(root + file)
  await writeFile(root + file, await format(changed, { ...options, filepath: file }))
}

const pick = <T extends object>(from: T, names: readonly (keyof T)[]) =>
  Object.fromEntries(names.map((name) => [name, from[name]]))

interface Answer {
  readonly devices: readonly { readonly modes: readonly object[]; readonly warnings: readonly object[] }[]
  readonly total: object
}

/** The README shows some of the fields, laid out by prettier. */
async function readmeAnswer(): Promise<void> {
  const text = await readFile(`${root}README.md`, 'utf8')
  const household: unknown = JSON.parse(/```json request\n([\s\S]*?)```/.exec(text)![1]!)
  const answer = (await answerTo('/v1/estimates', household)) as Answer & Record<string, unknown>
  const figures = ['powerW', 'energyKwhPerYear', 'costPerYear']
  const shown = {
    ...pick(answer, ['catalogueRevision', 'coverageProbability', 'currency', 'sampleData']),
    devices: answer.devices.map((device) => ({
      ...pick(device as Record<string, unknown>, ['id', 'category', 'confidence', ...figures]),
      modes: device.modes.map((mode) => {
        const { apparentPowerVa } = mode as { apparentPowerVa?: unknown }
        return { ...pick(mode as Record<string, unknown>, ['mode', 'confidence']), apparentPowerVa }
      }),
      warnings: device.warnings.map((warning) => pick(warning as Record<string, unknown>, ['code'])),
    })),
    total: pick(answer.total as Record<string, unknown>, [
      ...figures,
      'emissionsKgCo2ePerYear',
      'confidence',
      'confidenceShares',
    ]),
    nextReadings: answer['nextReadings'],
  }
  const json = await format(JSON.stringify(shown), { parser: 'json', printWidth: 110 })
  await writeFile(
    `${root}README.md`,
    text.replace(/```json answer\n[\s\S]*?```/, () => `\`\`\`json answer\n${json}\`\`\``),
  )
}

try {
  for (const {
    file,
    name,
    path,
    of: [operation, example],
  } of ANSWERS)
    await replaceLiteral(file, name, await answerTo(path, REQUEST_EXAMPLES[operation]![example]!.value))
  for (const { file, name, path } of READ) await replaceLiteral(file, name, await answerTo(path))
  await readmeAnswer()
} finally {
  await service.close()
}
