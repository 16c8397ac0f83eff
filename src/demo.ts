import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readConfig } from './config.ts'
import { compareEstimates } from './demo/compareEstimates.ts'
import { describeEstimate } from './demo/describeEstimate.ts'
import { ESTIMATE_QUERY, graphqlInput } from './demo/graphqlEstimate.ts'
import { createLog } from './log.ts'
import { projectFolder } from './persistence/projectFolder.ts'
import { estimateSchema } from './schemas/estimate.ts'
import { startService } from './startService.ts'

const say = (...lines: readonly string[]) => process.stdout.write(`${lines.join('\n')}\n`)

async function post(url: string, body: unknown): Promise<unknown> {
  const headers = { 'content-type': 'application/json', accept: 'application/json' }
  const answer = await fetch(url, { method: 'POST', headers, body: JSON.stringify(body) })
  const text = await answer.text()
  if (!answer.ok) throw new Error(`${url} answered ${answer.status}: ${text}`)
  return JSON.parse(text)
}

/** The main job on an invented household: over REST, shown, and once more over GraphQL. */
async function estimateHousehold(url: string): Promise<void> {
  const file = join('seed', 'demo-household.json')
  const text = await readFile(join(projectFolder(import.meta.url), file), 'utf8')
  const household = JSON.parse(text) as { devices: unknown[] }
  say(
    `Sending ${file}, an invented household with ${household.devices.length} entries, to POST ${url}/v1/estimates`,
    '',
  )
  const estimate = estimateSchema.parse(await post(`${url}/v1/estimates`, household))
  say(...describeEstimate(estimate))

  say(`Sending the same household to POST ${url}/graphql`)
  const variables = { input: graphqlInput(household) }
  const answer = (await post(`${url}/graphql`, { query: ESTIMATE_QUERY, variables })) as {
    data: { estimate: unknown }
  }
  const { figures, differences } = compareEstimates(estimate, answer.data.estimate)
  if (differences.length > 0) throw new Error(`GraphQL and REST differ:\n${differences.join('\n')}`)
  say(`GraphQL gives the same: all ${figures} figures, and every flag and sentence beside them, are equal.`)
}

async function demo(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'standby-draw-demo-'))
  try {
    say('Starting the service on a new embedded database in a temporary folder')
    const config = readConfig({ PORT: '0', DATA_DIR: folder, LOG_LEVEL: 'warn' })
    const service = await startService(config, createLog(config.LOG_LEVEL, process.stderr), (message) =>
      say(`  ${message}`),
    )
    try {
      await estimateHousehold(service.url)
    } finally {
      await service.close()
    }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
  say('The service has stopped, and its temporary folder is gone.')
}

try {
  await demo()
} catch (error) {
  process.stderr.write(`The demo failed. ${error instanceof Error ? error.message : String(error)}\n`)
  process.exitCode = 1
}
