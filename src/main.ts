import closeWithGrace from 'close-with-grace'
import { ConfigError, readConfig } from './config.ts'
import { DomainError } from './core/fault.ts'
import { createLog } from './log.ts'
import { startService } from './startService.ts'

/** How long running requests may take to end once the service is told to stop. */
const STOP_WITHIN_MS = 10_000

/** For people: on the error stream, so that the log on the standard output stays one JSON object a line. */
const say = (message: string) => process.stderr.write(`${message}\n`)

/** Never to the log, which others read and which is kept. */
const showFirstKey = (key: string) =>
  say(
    `The first admin key of this service, shown this once and stored nowhere: ${key}\n` +
      'Keep it where secrets are kept. Send it as Authorization: Bearer … to issue further keys at /v1/api-keys.',
  )

/** What the operator can mend is said in a sentence; anything else keeps its stack. */
function explain(error: unknown): string {
  if (error instanceof ConfigError || error instanceof DomainError) return error.message
  if (!(error instanceof Error)) return String(error)
  const { code, syscall, address, port } = error as NodeJS.ErrnoException & {
    address?: string
    port?: number
  }
  if (syscall === 'listen' && code === 'EADDRINUSE')
    return `${address}:${port} is in use by another program. Stop it, or set PORT to another port.`
  if (syscall === 'listen' && code === 'EACCES')
    return `This user may not listen on port ${port}. Set PORT above 1023.`
  if (syscall === 'listen' || syscall === 'getaddrinfo')
    return `This machine cannot listen on HOST (${error.message}). Set it to an address that the machine has, such as 127.0.0.1.`
  return error.stack ?? error.message
}

async function start(): Promise<void> {
  const config = readConfig()
  const log = createLog(config.LOG_LEVEL)
  const service = await startService(config, log, say, showFirstKey)
  say(
    `Listening on ${service.url} (API description at ${service.url}${config.DOCS ? '/docs' : '/openapi.json'}, GraphQL at ${service.url}/graphql)`,
  )
  closeWithGrace({ delay: STOP_WITHIN_MS, logger: log }, async ({ err, signal }) => {
    if (err) log.fatal({ err }, 'stopping after an unexpected error')
    else log.info({ signal }, 'stopping')
    await service.close()
  })
}

try {
  await start()
} catch (error) {
  say(`The service did not start. ${explain(error)}`)
  process.exitCode = 1
}
