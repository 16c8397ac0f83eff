import { mkdtemp, rm } from 'node:fs/promises'
import { createServer } from 'node:net'
import type { AddressInfo } from 'node:net'
import { once } from 'node:events'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ConfigError, readConfig } from '../../src/config.ts'
import { createLog } from '../../src/log.ts'
import { startService } from '../../src/startService.ts'

let folder: string
beforeAll(async () => (folder = await mkdtemp(join(tmpdir(), 'start-service-'))))
afterAll(() => rm(folder, { recursive: true, force: true }))

const start = async (environment: Record<string, string> = {}) => {
  const told: string[] = []
  const config = readConfig({ PORT: '0', DATA_DIR: join(folder, 'data'), ...environment })
  const service = await startService(
    config,
    createLog('silent'),
    (message) => told.push(message),
    (key) => told.push(`First key: ${key}`),
  )
  return { ...service, told }
}

describe('startService', () => {
  // Making a database takes seconds, more where other tests run beside this one.
  test(
    'makes the database, seeds it once, and is ready; gives it back where the port is taken; finds it again with all edits',
    { timeout: 120_000 },
    async () => {
      const first = await start()
      expect(first.told.join('\n')).toMatch(
        /Making the embedded database[^]*Loaded \d+ invented tariffs[^]*First key: sdk_\w+[^]*Loaded the sample catalogue: \d+ cat/,
      )
      expect(first.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/)
      expect((await fetch(`${first.url}/health/ready`)).status).toBe(200)
      const list = await (await fetch(`${first.url}/v1/categories?limit=200`)).json()
      const key = /First key: (\S+)/.exec(first.told.join('\n'))![1]!
      const made = await fetch(`${first.url}/v1/tariffs?reason=a+test`, {
        method: 'POST',
        headers: { authorization: `Bearer ${key}`, 'content-type': 'application/json' },
        body: JSON.stringify({
          code: 'own-tariff',
          name: 'Own',
          tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.2 },
          source: 'Price list of 2026',
        }),
      })
      expect(made.status).toBe(201)
      await first.close()
      await expect(fetch(`${first.url}/health/live`)).rejects.toThrow('fetch failed')

      const other = createServer().listen(0, '127.0.0.1')
      await once(other, 'listening')
      const { port } = other.address() as AddressInfo
      await expect(start({ PORT: String(port) })).rejects.toMatchObject({ code: 'EADDRINUSE', port })
      other.close()

      const second = await start()
      expect(second.told.join('\n')).not.toMatch(/Making|First key|Loaded/)
      expect(await (await fetch(`${second.url}/v1/categories?limit=200`)).json()).toEqual(list)
      await second.close()

      // Looked up among what the operator keeps by now; the database is given back, so that the next start can have it.
      await expect(start({ DEFAULT_TARIFF_CODE: 'no-such-tariff' })).rejects.toThrow(ConfigError)
      const third = await start({ DEFAULT_TARIFF_CODE: 'own-tariff' })
      expect(await (await fetch(`${third.url}/v1/tariffs/own-tariff`)).json()).toMatchObject({
        code: 'own-tariff',
      })
      await third.close()
    },
  )
})
