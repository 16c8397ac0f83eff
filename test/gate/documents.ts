/**
 * The committed documents that are made from the code: `npm run documents` writes them, the gate compares them, so that a
 * change of what callers and operators rely on is seen in review.
 */
import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { envExample } from './envExample.ts'
import { readme } from './readme.ts'
import { servedOpenApi } from './servedOpenApi.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const documents = [
  { file: 'src/edges/rest/openapi.json', text: await servedOpenApi() },
  { file: '.env.example', text: envExample() },
  { file: 'README.md', text: await readme(`${root}README.md`) },
]

/** Number of the first line that differs. */
function firstDifference(one: string, other: string): number {
  const lines = one.split('\n')
  const others = other.split('\n')
  return lines.findIndex((line, index) => line !== others[index]) + 1
}

for (const { file, text } of documents) {
  if (process.argv.includes('--write')) {
    await writeFile(root + file, text)
    continue
  }
  const committed = await readFile(root + file, 'utf8').catch((error: unknown) => String(error))
  if (committed === text) continue
  process.exitCode = 1
  console.log(
    `${file} is not what the code makes now (first difference in line ${firstDifference(text, committed)}). ` +
      'Run `npm run documents`, and look at the difference as a caller would.',
  )
}
