/**
 * `npm run bench:intake`: households that are kept by POST /v1/intake-batches beside the raw driver's multi-row insert of the very
 * same rows, in turn within one run; and the service's memory while a batch grows. Takes some minutes. Prints a table and
 * writes reports/bench-intake.json.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Client } from 'pg'
import type { Category } from '../../src/core/catalogue/category.ts'
import { addressOf, run as runSql, startServer } from '../helpers/postgresServer.ts'
import { inventHouseholds } from './households.ts'
import { median } from './median.ts'
import { startService } from './servers.ts'

const HOUSEHOLDS = 2_000
const DEVICES = 8
const ROUNDS = 5
const TOGETHER = 100
const KEY = 'the-key-of-the-bench-0123456789abcdef'
/** Lines of batches whose memory is looked at. */
const GROWING = [100, 1_000, 10_000, 100_000]

const root = fileURLToPath(new URL('../..', import.meta.url))
const authorization = { authorization: `Bearer ${KEY}` }

/** Sends a batch whose lines are made as they are taken, and reads the answer as it comes. @returns its last line */
async function send(url: string, query: string, lines: Iterator<string>): Promise<Record<string, unknown>> {
  const body = new ReadableStream<Uint8Array>({
    pull: (controller) => {
      const { value, done } = lines.next() as IteratorResult<string, undefined>
      if (done) controller.close()
      else controller.enqueue(Buffer.from(`${value}\n`))
    },
  })
  const answer = await fetch(`${url}/v1/intake-batches?${query}`, {
    method: 'POST',
    headers: { ...authorization, 'content-type': 'application/x-ndjson' },
    body,
    duplex: 'half',
  })
  if (!answer.ok || !answer.body) throw new Error(`Answered ${answer.status}: ${await answer.text()}`)
  let last = ''
  for await (const piece of answer.body as unknown as AsyncIterable<Uint8Array>) {
    const text = last + Buffer.from(piece).toString('utf8')
    last = text.slice(text.lastIndexOf('\n', text.length - 2) + 1)
  }
  return JSON.parse(last) as Record<string, unknown>
}

const secondsFor = async (work: () => Promise<unknown>) => {
  const start = process.hrtime.bigint()
  await work()
  return Number(process.hrtime.bigint() - start) / 1e9
}

const INVENTORY =
  'organisation id reference version created_at updated_at visits last_visit content batch batch_line batch_digest'
const ESTIMATE =
  'organisation inventory id visit made_at catalogue_revision method_version household basis result'
type Row = Readonly<Record<string, unknown>>

/** Rows as they went over the wire: JSON as text, times as text. */
async function rowsOf(client: Client, table: string, columns: string): Promise<Row[]> {
  const texts = columns.split(' ').map((name) => (name === 'batch_digest' ? name : `${name}::text`))
  return (
    await client.query<Row>(
      `SELECT ${texts.join(', ')} FROM public.${table} ORDER BY ${table === 'inventory' ? 'id' : 'inventory'}`,
    )
  ).rows
}

async function insert(client: Client, table: string, columns: string, rows: readonly Row[]): Promise<void> {
  const names = columns.split(' ')
  const places = rows.map((_, i) => `(${names.map((_name, k) => `$${i * names.length + k + 1}`).join(', ')})`)
  await client.query(
    `INSERT INTO public.${table} (${names.join(', ')}) VALUES ${places.join(', ')}`,
    rows.flatMap((row) => names.map((name) => row[name])),
  )
}

async function insertAll(
  client: Client,
  inventories: readonly Row[],
  estimates: readonly Row[],
): Promise<void> {
  for (let from = 0; from < inventories.length; from += TOGETHER) {
    await client.query('BEGIN')
    await insert(client, 'inventory', INVENTORY, inventories.slice(from, from + TOGETHER))
    await insert(client, 'stored_estimate', ESTIMATE, estimates.slice(from, from + TOGETHER))
    await client.query('COMMIT')
  }
}

/** Resident memory, MB, where the system tells it. */
function memoryOf(pid: number | undefined, line: 'VmRSS' | 'VmHWM'): number | null {
  if (process.platform !== 'linux') return null
  const found = new RegExp(`${line}:\\s+(\\d+)`).exec(readFileSync(`/proc/${pid}/status`, 'utf8'))
  return Math.round(Number(found?.[1]) / 1024)
}

const server = await startServer()
try {
  const [served, raw] = [addressOf(server, 'served'), addressOf(server, 'raw')]
  for (const name of ['served', 'raw']) await runSql(addressOf(server, 'postgres'), `CREATE DATABASE ${name}`)
  const service = await startService({ DATABASE_URL: served, BOOTSTRAP_ADMIN_KEY: KEY, LOG_LEVEL: 'warn' })
  // The second database gets its tables from the service, too.
  await (await startService({ DATABASE_URL: raw, BOOTSTRAP_ADMIN_KEY: KEY, LOG_LEVEL: 'warn' })).stop()
  const { items } = (await (await fetch(`${service.url}/v1/categories?limit=200`)).json()) as {
    items: Category[]
  }
  const households = inventHouseholds(HOUSEHOLDS, DEVICES, items)
  const lines = households.map((household, i) => JSON.stringify({ reference: `H-${i}`, ...household }))
  const [reader, writer] = [new Client({ connectionString: served }), new Client({ connectionString: raw })]
  await reader.connect()
  await writer.connect()
  const rates = { service: [] as number[], raw: [] as number[] }
  try {
    await send(service.url, 'detail=total', lines.slice(0, 500).values())
    let rows: [Row[], Row[]] = [[], []]
    for (let round = 0; round < ROUNDS; round++) {
      await reader.query('DELETE FROM public.inventory')
      await writer.query('TRUNCATE public.inventory CASCADE')
      const query = `store=true&batch=b${round}&detail=total`
      const taken = await secondsFor(async () => {
        const last = await send(service.url, query, lines.values())
        if (last['stored'] !== HOUSEHOLDS)
          throw new Error(`Stored ${String(last['stored'])}: ${JSON.stringify(last)}`)
      })
      rows = [await rowsOf(reader, 'inventory', INVENTORY), await rowsOf(reader, 'stored_estimate', ESTIMATE)]
      const inserted = await secondsFor(() => insertAll(writer, ...rows))
      rates.service.push(HOUSEHOLDS / taken)
      rates.raw.push(HOUSEHOLDS / inserted)
      console.log(
        `round ${round + 1} of ${ROUNDS}: ${(HOUSEHOLDS / taken).toFixed(0)} kept, ${(HOUSEHOLDS / inserted).toFixed(0)} inserted a second`,
      )
    }
    const memory: object[] = []
    for (const count of GROWING) {
      const cycle = (function* () {
        for (let i = 0; i < count; i++) yield lines[i % lines.length]!
      })()
      const seconds = await secondsFor(() => send(service.url, 'detail=total', cycle))
      memory.push({
        households: count,
        perSecond: Math.round(count / seconds),
        residentMb: memoryOf(service.pid, 'VmRSS'),
        mostResidentMb: memoryOf(service.pid, 'VmHWM'),
      })
      console.log(`${count} households estimated: ${JSON.stringify(memory.at(-1))}`)
    }
    const ratio = median(rates.service.map((rate, round) => rate / rates.raw[round]!))
    const report = { households: HOUSEHOLDS, devices: DEVICES, rates, ratio, memory }
    console.log(`kept over inserted: ${ratio.toFixed(2)} (median of ${ROUNDS} rounds)`)
    mkdirSync(`${root}reports`, { recursive: true })
    writeFileSync(`${root}reports/bench-intake.json`, `${JSON.stringify(report, null, 2)}\n`)
  } finally {
    await reader.end()
    await writer.end()
    await service.stop()
  }
} finally {
  await server.stop()
}
