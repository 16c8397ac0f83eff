import { rename, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { DomainError } from '../core/fault.ts'
import { errorCode } from './errorCode.ts'
import { type LockHolder, lives, readHolder, thisProcess } from './lockHolder.ts'

const SETTLING_MS = 100

/**
 * Takes a folder for this process alone, by a file in it that names the process. (PGlite takes no lock, and two processes
 * that write in one folder destroy the database.) A lock whose process no longer lives is taken over at once. A process
 * in another container that shares the folder cannot be looked up; but a holder touches its file at every heartbeat, so
 * a file that is not touched for three of them was left behind.
 * @returns what gives the folder back
 * @throws DomainError data-folder-in-use
 */
export async function lockFolder(
  folder: string,
  onProgress: (message: string) => void,
  heartbeatMs = 4_000,
): Promise<() => Promise<void>> {
  const file = join(folder, 'embedded.lock')
  const mine = await thisProcess()
  while (!(await create(file, mine))) {
    const found = await readHolder(file)
    if (await isHeld(file, found, onProgress, heartbeatMs)) throw await inUse(file)
    if (await takeOver(file, found, mine)) break
  }
  const heartbeat = setInterval(() => void touch(file, mine, onProgress), heartbeatMs).unref()
  return async () => {
    clearInterval(heartbeat)
    if ((await readHolder(file))?.token === mine.token) await rm(file, { force: true })
  }
}

async function create(file: string, mine: LockHolder): Promise<boolean> {
  try {
    await writeFile(file, JSON.stringify(mine), { flag: 'wx', mode: 0o600 })
    return true
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false
    throw error
  }
}

async function isHeld(
  file: string,
  holder: LockHolder | null,
  onProgress: (message: string) => void,
  heartbeatMs: number,
): Promise<boolean> {
  const known = holder && (await lives(holder))
  if (known !== null) return known
  const before = await lastTouched(file)
  if (before === null) return false
  onProgress(`Watching whether ${holder?.place ?? 'another process'} still holds ${file}`)
  await wait(3 * heartbeatMs)
  return ![before, null].includes(await lastTouched(file))
}

async function lastTouched(file: string): Promise<number | null> {
  try {
    return (await stat(file)).mtimeMs
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null
    throw error
  }
}

/**
 * Two processes may find the same lock left behind. Each puts its own in place in one step, gives the other the time to
 * do the same, and goes on only where its own is still there.
 * @returns false where the lock is no longer the one that was found
 */
async function takeOver(file: string, found: LockHolder | null, mine: LockHolder): Promise<boolean> {
  const own = `${file}.${mine.token}`
  await writeFile(own, JSON.stringify(mine), { mode: 0o600 })
  try {
    if ((await readHolder(file))?.token !== found?.token) return false
    await rename(own, file)
  } finally {
    await rm(own, { force: true })
  }
  await wait(SETTLING_MS)
  if ((await readHolder(file))?.token !== mine.token) throw await inUse(file)
  return true
}

async function touch(file: string, mine: LockHolder, onProgress: (message: string) => void): Promise<void> {
  try {
    if ((await readHolder(file))?.token !== mine.token) throw new Error('it is gone or names another process')
    const now = new Date()
    await utimes(file, now, now)
  } catch (error) {
    onProgress(`${file} no longer guards the embedded database (${String(error)}); restart this process`)
  }
}

async function inUse(file: string): Promise<DomainError> {
  const holder = await readHolder(file)
  const who = holder ? `Process ${holder.pid} on ${holder.place}` : 'Another process'
  return new DomainError(
    'data-folder-in-use',
    `${who} has the embedded database open (its lock is ${file}), and only one process can. Stop that one, or start ` +
      'this one with another DATA_DIR; to run several at once, set DATABASE_URL to a PostgreSQL server.',
  )
}
