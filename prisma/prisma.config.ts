import { defineConfig } from 'prisma/config'

// `prisma generate` never runs the schema engine, yet the CLI downloads it unless it is told that there is one.
if (process.argv.includes('generate')) process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath

export default defineConfig({ schema: 'schema.prisma', migrations: { path: 'migrations' } })
