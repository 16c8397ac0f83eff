import { readFile } from 'node:fs/promises'
import { testApp } from '../helpers/testApp.ts'

/** The text of GET /openapi.json, laid out for people, from the whole app over an empty catalogue in memory. */
export async function servedOpenApi(): Promise<string> {
  const manifest = await readFile(new URL('../../package.json', import.meta.url), 'utf8')
  const { version } = JSON.parse(manifest) as { version: string }
  const served = await testApp({ version, categories: [] })
  try {
    const answer = await served.app.inject('/openapi.json')
    if (answer.statusCode !== 200)
      throw new Error(`/openapi.json answered ${answer.statusCode}: ${answer.body}`)
    return `${JSON.stringify(answer.json(), null, 2)}\n`
  } finally {
    await served.close()
  }
}
