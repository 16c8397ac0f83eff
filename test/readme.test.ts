import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { readSeed } from '../src/readSeed.ts'
import { type TestApp, testApp } from './helpers/testApp.ts'

const text = await readFile(fileURLToPath(new URL('../README.md', import.meta.url)), 'utf8')

/** The text of a fenced block by the words behind its fence. */
function block(words: string): string {
  const found = new RegExp(`^\`\`\`${words}\\n([\\s\\S]*?)^\`\`\`$`, 'm').exec(text)
  if (!found?.[1]) throw new Error(`README.md has no block marked "${words}"`)
  return found[1]
}
const household = JSON.parse(block('json request')) as Record<string, unknown>
const shown = JSON.parse(block('json answer')) as { devices: unknown[]; total: Record<string, unknown> }

let service: TestApp
beforeAll(async () => {
  const { categories } = await readSeed()
  service = await testApp({ categories })
})
afterAll(() => service.close())

test('the request in the README gets the answer in the README', async () => {
  const answer = await service.send.post('/v1/estimates').send(household).expect(200)
  expect(shown.devices).toHaveLength(2)
  expect(answer.body).toMatchObject(shown)
})

test('the GraphQL document in the README gives the same figures', async () => {
  const answer = await service.send
    .post('/graphql')
    .send({ query: block('graphql'), variables: { input: forGraphql(household) } })
    .expect(200)
  expect(answer.body.errors).toBeUndefined()
  const { total } = answer.body.data.estimate
  expect(total.powerW).toEqual(shown.total['powerW'])
  expect(shown.total['costPerYear']).toMatchObject(total.costPerYear)
})

test('the README opens with the job and then its two commands', () => {
  const commands = [...text.matchAll(/^```sh\n(.*)\n```$/gm)].map((match) => match[1])
  expect(commands.slice(0, 2)).toEqual(['npm ci && npm run demo', 'npm ci && npm test'])
  expect(text.indexOf('home-energy assessor')).toBeLessThan(text.indexOf('```sh'))
})

interface Mode {
  readonly mode: string
  readonly hoursPerWeek: number
  readonly reading: { readonly kind: string }
}

/** The household in GraphQL's spelling: modes in capitals, readings and alternatives by name. */
function forGraphql(body: Record<string, unknown>): unknown {
  const { kind: tariffKind, ...tariff } = body['tariff'] as { kind: string }
  const devices = (body['devices'] as { modes: Mode[] }[]).map((device) => ({
    ...device,
    modes: device.modes.map(({ mode, hoursPerWeek, reading: { kind, ...figures } }) => ({
      mode: mode.toUpperCase().replaceAll('-', '_'),
      hoursPerWeek: { exact: hoursPerWeek },
      reading: { [kind]: figures },
    })),
  }))
  return { ...body, tariff: { [tariffKind]: tariff }, devices }
}
