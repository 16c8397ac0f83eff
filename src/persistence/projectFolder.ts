import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/**
 * The folder of package.json, found by walking up from a module, so that it is the same one whether that module runs
 * from src/ or, compiled, from dist/.
 */
export function projectFolder(moduleUrl: string): string {
  const start = dirname(fileURLToPath(moduleUrl))
  let folder = start
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder)
    if (above === folder) throw new Error(`There is no package.json in ${start} or any folder above it.`)
    folder = above
  }
  return folder
}
