import { SETTINGS } from '../../src/config.ts'

const HEAD = `# Every variable that the service reads, as it is where it is not set. Copy this file to .env and change what should differ:
# \`npm start\` reads .env, and \`docker run --env-file .env\` does.
`

/** The text of .env.example, made from the settings that the service knows. */
export function envExample(): string {
  const entries = Object.entries(SETTINGS).map(([name, { meaning, allowed, fallback, ...others }]) => {
    const inWords = 'fallbackText' in others ? others.fallbackText : undefined
    const unset = inWords === undefined ? '' : ` Not set: ${inWords.replace(/^not set: /, '')}.`
    const value = inWords === undefined ? String(fallback) : ''
    return `# ${meaning}: ${allowed}.${unset}\n#${name}=${value}\n`
  })
  return [HEAD, ...entries].join('\n')
}
