import { writeFileSync } from 'node:fs'
import { createInterface } from 'node:readline'

/**
 * A Prisma generator that writes what Prisma understands of schema.prisma to its output file, as JSON. `prisma generate`
 * starts it, and speaks JSON-RPC with it: one request a line on its input, one answer a line on its error output.
 */
for await (const line of createInterface({ input: process.stdin })) {
  const { id, method, params } = JSON.parse(line)
  if (method === 'generate')
    writeFileSync(params.generator.output.value, JSON.stringify(params.dmmf.datamodel))
  const result = method === 'getManifest' ? { manifest: { prettyName: 'the data model' } } : null
  process.stderr.write(`${JSON.stringify({ jsonrpc: '2.0', id, result })}\n`)
}
