import { randomUUID } from 'node:crypto'
import { readFile, readlink } from 'node:fs/promises'
import { hostname } from 'node:os'
import { errorCode } from './errorCode.ts'

/** The process that has a folder open, as its lock file names it. */
export interface LockHolder {
  readonly pid: number
  /** Where that id means this process: host name and, on Linux, process-id namespace, since each container has its own. */
  readonly place: string
  /** When it started, in the system's own count, so that an id given to a later process is not taken for it; null where unknown. */
  readonly start: string | null
  readonly token: string
}

export async function thisProcess(): Promise<LockHolder> {
  return {
    pid: process.pid,
    place: await thisPlace(),
    start: await startOf(process.pid),
    token: randomUUID(),
  }
}

/** Reads a lock file; null where there is none or it is not written to its end yet. */
export async function readHolder(file: string): Promise<LockHolder | null> {
  try {
    return JSON.parse(await readFile(file, 'utf8')) as LockHolder
  } catch (error) {
    if (error instanceof SyntaxError || errorCode(error) === 'ENOENT') return null
    throw error
  }
}

/** Whether the process lives, or null where that cannot be known from here. */
export async function lives({ pid, place, start }: LockHolder): Promise<boolean | null> {
  if (place !== (await thisPlace())) return null
  if ((await startOf(pid)) !== start) return false
  try {
    return process.kill(pid, 0)
  } catch (error) {
    // EPERM: it lives, and belongs to another user.
    return errorCode(error) === 'EPERM'
  }
}

async function thisPlace(): Promise<string> {
  const namespace = await orNull(readlink('/proc/self/ns/pid'))
  return namespace === null ? hostname() : `${hostname()} ${namespace}`
}

/** The start time in /proc/[pid]/stat (field 22, proc_pid_stat(5)), or null for a dead process and where there is no /proc. */
async function startOf(pid: number): Promise<string | null> {
  const status = await orNull(readFile(`/proc/${pid}/stat`, 'utf8'))
  if (status === null) return null
  // The second field is the program's name in parentheses, and may hold spaces and parentheses itself.
  const fields = status.slice(status.lastIndexOf(')') + 2).split(' ')
  const [state, start] = [fields[0], fields[19]]
  return state === 'Z' || start === undefined ? null : start
}

async function orNull<T>(read: Promise<T>): Promise<T | null> {
  try {
    return await read
  } catch (error) {
    if (['ENOENT', 'ESRCH', 'EACCES', 'EINVAL'].includes(errorCode(error))) return null
    throw error
  }
}
