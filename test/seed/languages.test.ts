import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { ConfigError, quizLanguagesOf, readConfig } from '../../src/config.ts'
import { readSeed } from '../../src/readSeed.ts'
import { testApp } from '../helpers/testApp.ts'

const shipped = fileURLToPath(new URL('../../seed', import.meta.url))
let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'languages-'))
  await cp(shipped, folder, { recursive: true })
})
afterEach(() => rm(folder, { recursive: true }))

const read = async (tag: string): Promise<Record<string, unknown>> =>
  JSON.parse(await readFile(join(folder, 'languages', `${tag}.json`), 'utf8')) as Record<string, unknown>
const write = (tag: string, words: unknown) =>
  writeFile(
    join(folder, 'languages', `${tag}.json`),
    typeof words === 'string' ? words : JSON.stringify(words),
  )
/** The paths of all texts in a file. */
const keysOf = (value: unknown, path = ''): string[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => keysOf(inner, `${path}/${key}`))
    : [path]
const messageOf = (error: unknown) => (error instanceof Error ? error.message : '')

describe('the shipped languages', () => {
  test('the second has every key that English has, and no other', async () => {
    expect(keysOf(await read('de'))).toEqual(keysOf(await read('en')))
  })

  test('each has a label for every category that is shipped, and for no other', async () => {
    const { categories, languages } = await readSeed()
    const codes = categories.map(({ code }) => code).sort()
    for (const { categories: labels } of languages.values()) expect(Object.keys(labels).sort()).toEqual(codes)
  })

  test('no two categories have one label, since nobody could tell them apart', async () => {
    for (const { categories } of (await readSeed()).languages.values()) {
      const labels = Object.values(categories).map(({ label }) => label)
      expect(new Set(labels).size).toBe(labels.length)
    }
  })

  test('no text was left in English', async () => {
    const [english, german] = [await read('en'), await read('de')]
    const texts = (words: unknown): string[] =>
      typeof words === 'object' && words !== null ? Object.values(words).flatMap(texts) : [String(words)]
    const others = texts(german)
    const same = texts(english).filter((text, i) => text === others[i])
    expect(same.sort()).toEqual(['Router', 'Sauna', 'Scanner'])
  })
})

describe('a language file', () => {
  test('more in the folder is all that a third language takes, and what it has no label for is asked in the catalogue’s words', async () => {
    const words = {
      ...(await read('en')),
      language: 'nl',
      name: 'Nederlands',
      categories: { router: { label: 'Modem thuis' } },
    }
    await write('nl', words)
    const seed = await readSeed(folder)
    const service = await testApp({
      categories: seed.categories,
      quizLanguages: quizLanguagesOf(readConfig({}), seed.languages),
    })
    try {
      const { body, headers } = await service.send
        .get('/v1/quiz?categories=router,television')
        .set('accept-language', 'nl-BE, de;q=0.8')
        .expect(200)
      expect(headers['content-language']).toBe('nl')
      expect(body.languages.map(({ language }: { language: string }) => language)).toEqual(['de', 'en', 'nl'])
      const questions = body.groups.flatMap(({ questions: of }: { questions: object[] }) => of)
      expect(questions).toMatchObject([
        { category: 'television', label: 'Television without network', labelLanguage: 'en' },
        { category: 'router', label: 'Modem thuis', labelLanguage: 'nl' },
      ])
    } finally {
      await service.close()
    }
  })

  test('that is wrong stops the start, with every fault of every file named', async () => {
    const german = (await read('de')) as { hours: Record<string, unknown>; texts: Record<string, unknown> }
    const hours = Object.fromEntries(Object.entries(german.hours).filter(([choice]) => choice !== 'rarely'))
    await write('de', { ...german, hours, texts: { ...german.texts, welcome: 'x', introduction: '' } })
    await write('en', '{ "language": ')
    await write('fr', { ...german, language: 'nl' })
    await write('xx_yy', { ...german, language: 'xx_yy' })
    const message = messageOf(await readSeed(folder).catch((error: unknown) => error))
    expect(message.split('\n').filter((line) => line.startsWith('languages/'))).toEqual([
      'languages/de.json, /texts/introduction: must not be empty, but it is "".',
      'languages/de.json, /texts/welcome: There is no field "welcome" here; remove it or correct its name.',
      'languages/de.json, /hours/rarely: This field is required.',
      'languages/en.json: must be an object, but it is "{ \\"language\\": ".',
      'languages/fr.json, /language: The file is named fr.json, but its language is "nl"; make them the same.',
      'languages/xx_yy.json, /language: must be a language tag (BCP 47) in its usual spelling, such as de or pt-BR.',
    ])
  })

  test('that the catalogue is written in must be there', async () => {
    const { languages } = await readSeed()
    const start = () => quizLanguagesOf(readConfig({ CATALOGUE_LANGUAGE: 'fr' }), languages)
    expect(start).toThrow(ConfigError)
    expect(start).toThrow('CATALOGUE_LANGUAGE is "fr": it must be one of de, en.')
  })

  test('that changes by a word changes the tag of every quiz', async () => {
    const before = quizLanguagesOf(readConfig({}), (await readSeed(folder)).languages).fingerprint
    await write('de', { ...(await read('de')), name: 'Deutsch!' })
    expect(quizLanguagesOf(readConfig({}), (await readSeed(folder)).languages).fingerprint).not.toBe(before)
  })
})
