import { readConfig } from '../../src/config.ts'
import { createLog } from '../../src/log.ts'
import { startService } from '../../src/startService.ts'

/** Another process of the service, on the PostgreSQL that it is given, with the admin key that it is given. Says where it listens. */
const [DATABASE_URL, BOOTSTRAP_ADMIN_KEY] = process.argv.slice(2)
const config = readConfig({ DATABASE_URL, BOOTSTRAP_ADMIN_KEY, PORT: '0', LOG_LEVEL: 'error' })
const { url } = await startService(config, createLog(config.LOG_LEVEL, process.stderr), () => undefined)
process.stdout.write(url)
process.stdin.resume()
