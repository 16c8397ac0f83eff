import { setTimeout as wait } from 'node:timers/promises'

/** Waits, and keeps no process alive by it; false where it was stopped. */
export async function pause(ms: number, signal: AbortSignal): Promise<boolean> {
  try {
    await wait(ms, undefined, { signal, ref: false })
    return true
  } catch (error) {
    if (signal.aborted) return false
    throw error
  }
}
