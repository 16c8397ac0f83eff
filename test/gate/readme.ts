import { readFile } from 'node:fs/promises'
import { SETTINGS } from '../../src/config.ts'

const SECTION = /<!-- settings -->[\s\S]*<!-- \/settings -->/

/** README.md with its table of settings as the code has it; the rest is as it stands in the file. */
export async function readme(file: string): Promise<string> {
  const text = await readFile(file, 'utf8')
  const rows = Object.entries(SETTINGS).map(([name, { meaning, allowed, fallback, ...others }]) => {
    const value = 'fallbackText' in others ? others.fallbackText : `\`${String(fallback)}\``
    return `| \`${name}\` | ${meaning} | ${allowed} | ${value} |`
  })
  const table = ['| variable | meaning | allowed | default |', '| --- | --- | --- | --- |', ...rows].join(
    '\n',
  )
  return text.replace(SECTION, () => `<!-- settings -->\n\n${table}\n\n<!-- /settings -->`)
}
