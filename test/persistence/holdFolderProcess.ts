import { openStores } from '../../src/persistence/openStores.ts'

/** Another process of the service: opens the embedded database in the folder that it is given, and stays until it is ended. */
const dataDir = process.argv[2]!
await openStores({ dataDir })
process.stdout.write('open\n')
process.stdin.resume()
