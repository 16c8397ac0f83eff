import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** A throw-away project that has this one's settings and packages, and only the given files. */
export function plantTree(files: Readonly<Record<string, string>>): string {
  const tree = mkdtempSync(join(tmpdir(), 'planted-'))
  for (const name of ['package.json', 'tsconfig.json']) cpSync(join(root, name), join(tree, name))
  symlinkSync(join(root, 'node_modules'), join(tree, 'node_modules'))
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(tree, dirname(name)), { recursive: true })
    writeFileSync(join(tree, name), `${text}\n`)
  }
  return tree
}

export const removeTree = (tree: string) => rmSync(tree, { recursive: true, force: true })

/** Runs one of the project's tools, with the project's settings for it, on a planted tree. */
export function runTool(
  tree: string,
  tool: string,
  args: readonly string[],
): { code: number | null; stdout: string } {
  const ran = spawnSync(join(root, 'node_modules/.bin', tool), args, {
    cwd: tree,
    encoding: 'utf8',
    env: { ...process.env, FORCE_COLOR: '0' },
  })
  return { code: ran.status, stdout: ran.stdout }
}

export const settingsFile = (name: string) => join(root, '.config', name)
