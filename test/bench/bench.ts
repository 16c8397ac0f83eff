/**
 * `npm run bench`: estimates over REST and GraphQL beside a bare node:http server that parses the same bodies and answers
 * the same bytes, in turn within one run, so that whatever else the machine does falls on both; and the core alone.
 * Takes about two minutes. Prints a table and writes reports/bench.json.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { catalogueOf } from '../../src/core/catalogue/catalogue.ts'
import type { Category } from '../../src/core/catalogue/category.ts'
import { graphqlRequest } from './graphqlRequest.ts'
import { inventHouseholds } from './households.ts'
import { measureRate } from './load.ts'
import { median } from './median.ts'
import { type Running, startBare, startService } from './servers.ts'
import { measureStages } from './stages.ts'

const HOUSEHOLDS = 500
const DEVICES = 20
const ROUNDS = 6
const SECONDS = 3
const STAGE_SECONDS = 2

interface Row {
  readonly name: string
  readonly servicePerSecond: number
  readonly barePerSecond: number
  /** Median over the rounds of the ratio within a round. */
  readonly ratio: number
  readonly ratios: readonly number[]
}

async function readCategories(url: string): Promise<Category[]> {
  const answer = await fetch(`${url}/v1/categories?limit=200`)
  const { items } = (await answer.json()) as { items: Category[] }
  if (items.length < 80)
    throw new Error(`The service has ${items.length} categories; the bench wants the sample catalogue.`)
  return items
}

/** The answer to each body; the bare server gives these very bytes. */
async function answersTo(url: string, bodies: readonly string[]): Promise<string[]> {
  const answers: string[] = []
  for (const body of bodies) {
    const answer = await fetch(url, { method: 'POST', headers: { 'content-type': 'application/json' }, body })
    const text = await answer.text()
    if (!answer.ok || text.startsWith('{"errors"'))
      throw new Error(`${url} answered ${answer.status}: ${text.slice(0, 500)}`)
    answers.push(text)
  }
  return answers
}

/** Service and bare server take turns, the other one first in every second round. */
async function compare(name: string, service: string, bare: string, bodies: readonly string[]): Promise<Row> {
  const rates = { service: [] as number[], bare: [] as number[] }
  await measureRate(service, bodies, SECONDS)
  await measureRate(bare, bodies, SECONDS)
  for (let round = 0; round < ROUNDS; round++) {
    for (const side of round % 2 === 0 ? (['service', 'bare'] as const) : (['bare', 'service'] as const))
      rates[side].push(await measureRate(side === 'service' ? service : bare, bodies, SECONDS))
    console.log(
      `${name}, round ${round + 1} of ${ROUNDS}: ${(rates.service[round]! / rates.bare[round]!).toFixed(2)}`,
    )
  }
  const ratios = rates.service.map((rate, round) => rate / rates.bare[round]!)
  return {
    name,
    servicePerSecond: median(rates.service),
    barePerSecond: median(rates.bare),
    ratio: median(ratios),
    ratios,
  }
}

const running: Running[] = []
async function run(): Promise<void> {
  console.log('Starting the service on an embedded database of its own …')
  const service = await startService()
  running.push(service)
  const categories = await readCategories(service.url)
  const households = inventHouseholds(HOUSEHOLDS, DEVICES, categories)

  const rows: Row[] = []
  const edges = [
    { name: 'REST', path: '/v1/estimates', bodies: households.map((household) => JSON.stringify(household)) },
    { name: 'GraphQL', path: '/graphql', bodies: households.map(graphqlRequest) },
  ]
  for (const { name, path, bodies } of edges) {
    const bare = await startBare(await answersTo(service.url + path, bodies))
    running.push(bare)
    rows.push(await compare(name, service.url + path, bare.url + path, bodies))
  }
  const stages = await measureStages(households, catalogueOf(1, categories), STAGE_SECONDS)
  const corePerSecond = 1_000_000 / stages.find(({ stage }) => stage === 'estimate')!.microseconds

  console.log(
    `\nEstimates of ${DEVICES} devices a second, Node ${process.version}; medians of ${ROUNDS} rounds of ${SECONDS} s`,
  )
  console.table(
    rows.map(({ name, servicePerSecond, barePerSecond, ratio }) => ({
      edge: name,
      service: Math.round(servicePerSecond),
      'bare node:http': Math.round(barePerSecond),
      ratio: ratio.toFixed(2),
    })),
  )
  console.log('One estimate over REST, without HTTP, by stage:')
  console.table(stages.map(({ stage, microseconds }) => ({ stage, microseconds: Math.round(microseconds) })))
  console.log(`The core alone: ${Math.round(corePerSecond)} households a second on one thread.`)
  const file = fileURLToPath(new URL('../../reports/bench.json', import.meta.url))
  mkdirSync(fileURLToPath(new URL('../../reports', import.meta.url)), { recursive: true })
  writeFileSync(
    file,
    `${JSON.stringify({ node: process.version, devices: DEVICES, rows, stages, corePerSecond }, null, 2)}\n`,
  )
}

try {
  await run()
} finally {
  for (const server of running) await server.stop()
}
