import { afterAll, beforeAll, expect, it } from 'vitest'
import { withPostgres } from '../helpers/postgres.ts'
import { type OtherProcess, startProcess } from './startProcess.ts'

const postgres = withPostgres()
const KEY = 'the-admin-key-of-both-processes-0123456789'
/** What the service promises: an edit made by one process is seen by every other within this time. */
const PROMISED_MS = 1_000
const GENEROUS_MS = 20_000

const processes: OtherProcess[] = []
let editor: string
let reader: string
beforeAll(async () => {
  const databaseUrl = await postgres.freshDatabase()
  const program = new URL('./serviceProcess.ts', import.meta.url)
  // One after the other, so that the first has loaded the sample catalogue when the second starts.
  processes.push(await startProcess(program, databaseUrl, KEY))
  processes.push(await startProcess(program, databaseUrl, KEY))
  ;[editor, reader] = processes.map(({ said }) => said) as [string, string]
})
afterAll(async () => {
  await Promise.all(processes.map((each) => each.kill()))
})

async function rename(name: string): Promise<void> {
  const address = `${editor}/v1/categories/television`
  const etag = (await fetch(address)).headers.get('etag')!
  const answer = await fetch(`${address}?reason=a+test`, {
    method: 'PATCH',
    headers: {
      authorization: `Bearer ${KEY}`,
      'content-type': 'application/merge-patch+json',
      'if-match': etag,
    },
    body: JSON.stringify({ name }),
  })
  expect(answer.status).toBe(200)
}

const nameIn = async (url: string) =>
  ((await (await fetch(`${url}/v1/categories/television`)).json()) as { name: string }).name

/** How long it takes from now until a process answers with a name, in ms. */
async function seenAfter(url: string, name: string): Promise<number> {
  const start = performance.now()
  while ((await nameIn(url)) !== name) {
    if (performance.now() - start > GENEROUS_MS) throw new Error(`"${name}" was not seen at all`)
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
  return performance.now() - start
}

it('an edit made by one process is seen by another on the same PostgreSQL within one second', async () => {
  for (const name of ['First name', 'Second name', 'Third name']) {
    await rename(name)
    expect(await seenAfter(reader, name)).toBeLessThanOrEqual(PROMISED_MS)
  }
})

it('the process that made it sees it at once', async () => {
  await rename('Fourth name')
  expect(await nameIn(editor)).toBe('Fourth name')
})

it('estimates of the other process follow, and those of a past revision stay as they were', async () => {
  const estimate = async (catalogueRevision?: number) => {
    const answer = await fetch(`${reader}/v1/estimates`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ catalogueRevision, devices: [{ category: 'television' }] }),
    })
    return (await answer.json()) as { devices: { categoryName: string }[] }
  }
  const before = await estimate(1)
  await rename('Fifth name')
  await seenAfter(reader, 'Fifth name')
  expect((await estimate()).devices[0]!.categoryName).toBe('Fifth name')
  expect(await estimate(1)).toEqual(before)
})

it('an edit of a tariff by one process is what the other prices with, within one second', async () => {
  const address = `${editor}/v1/tariffs/sample-flat-eur`
  const priceIn = async () => {
    const answer = await fetch(`${reader}/v1/estimates`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ devices: [{ category: 'television' }] }),
    })
    return ((await answer.json()) as { used: { standbyPricePerKwh: number } }).used.standbyPricePerKwh
  }
  for (const pricePerKwh of [0.41, 0.42, 0.43]) {
    const answer = await fetch(`${address}?reason=a+test`, {
      method: 'PATCH',
      headers: {
        authorization: `Bearer ${KEY}`,
        'content-type': 'application/merge-patch+json',
        'if-match': (await fetch(address)).headers.get('etag')!,
      },
      body: JSON.stringify({ tariff: { pricePerKwh } }),
    })
    expect(answer.status).toBe(200)
    const start = performance.now()
    while ((await priceIn()) !== pricePerKwh) {
      if (performance.now() - start > GENEROUS_MS) throw new Error(`${pricePerKwh} was not seen at all`)
      await new Promise((resolve) => setTimeout(resolve, 10))
    }
    expect(performance.now() - start).toBeLessThanOrEqual(PROMISED_MS)
  }
})

it('own figures that one process lays are seen by another within one second, and the shared ones when they are taken away', async () => {
  const admin = { authorization: `Bearer ${KEY}` }
  const overlay = `${editor}/v1/overlay/categories/television`
  const layerAt = async () => {
    const answer = await fetch(`${reader}/v1/categories/television`, { headers: admin })
    return ((await answer.json()) as { layer: string }).layer
  }
  const layerAfter = async (layer: string) => {
    const start = performance.now()
    while ((await layerAt()) !== layer) {
      if (performance.now() - start > GENEROUS_MS) throw new Error(`${layer} was not seen at all`)
      await new Promise((resolve) => setTimeout(resolve, 10))
    }
    return performance.now() - start
  }
  for (let round = 0; round < 2; round++) {
    const laid = await fetch(`${overlay}?reason=a+test`, {
      method: 'PATCH',
      headers: { ...admin, 'content-type': 'application/merge-patch+json', 'if-none-match': '*' },
      body: JSON.stringify({ defaultQuantity: 2 }),
    })
    expect(laid.status).toBe(201)
    expect(await layerAfter('organisation')).toBeLessThanOrEqual(PROMISED_MS)
    const removed = await fetch(`${overlay}?reason=a+test`, {
      method: 'DELETE',
      headers: { ...admin, 'if-match': laid.headers.get('etag')! },
    })
    expect(removed.status).toBe(200)
    expect(await layerAfter('shared')).toBeLessThanOrEqual(PROMISED_MS)
  }
})
