import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { readSeed } from '../../src/readSeed.ts'

const shipped = fileURLToPath(new URL('../../seed', import.meta.url))
let folder = ''

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'seed-'))
  await cp(shipped, folder, { recursive: true })
})
afterEach(() => rm(folder, { recursive: true }))

async function replaceIn(name: string, old: string, next: string) {
  const text = await readFile(join(folder, name), 'utf8')
  expect(text).toContain(old)
  await writeFile(join(folder, name), text.replace(old, next))
}

test('the shipped files are found from wherever the service is started, and are what a copy of them is', async () => {
  expect(await readSeed()).toEqual(await readSeed(folder))
})

test('every fault in every file is thrown at once, by file, line and column', async () => {
  await replaceIn('categories/video.csv', '0.8,3.5,9,sample', '8,3.5,9,sample')
  await replaceIn('categories/audio.csv', ',sample,', ',survey,')
  await replaceIn('tariffs.csv', 'EUR,0.3', 'euro,0.3')
  await replaceIn('tariffs.json', '"upToKwh": 500', '"upToKwh": 50')
  await replaceIn('emission-factors.csv', ',V2\n', ',sure\n')
  const error: unknown = await readSeed(folder).catch((reason: unknown) => reason)
  const message = error instanceof Error ? error.message : ''
  expect(message).toContain(
    'categories/video.csv, line 3, lowW: lowW (8 W) must not be above typicalW (3.5 W).',
  )
  expect(message).toContain('categories/audio.csv, line 2, provenance:')
  expect(message).toContain('tariffs.csv, line 2, currency:')
  expect(message).toContain(
    'tariffs.json, /0/tariff/blocks/1/upToKwh: A block must end above the one before it (200 kWh)',
  )
  expect(message).toContain('emission-factors.csv, line 2, mark:')
})

test('a name that two categories share is refused, since one of them could not be found by it', async () => {
  await replaceIn('categories/kitchen.csv', 'bread machine', 'telly')
  await expect(readSeed(folder)).rejects.toThrow('"telly" names bread-maker and television')
})
