import type { RequestCounter } from '../stores/requestCounter.ts'

const CALLERS = 50_000

interface Window {
  readonly since: number
  readonly requests: number
}

/**
 * Counts in this process alone: several processes each count by themselves, so that a caller of n of them may get through
 * up to n times as much. That keeps every request from waiting for the database, and a limit that is there to keep one
 * caller from taking everything need not be exact.
 *
 * Holds so many callers and no more. One that is not counted longest is forgotten first, and then begins a new window.
 */
export function openMemoryRequestCounter(callers: number = CALLERS): RequestCounter {
  const windows = new Map<string, Window>()
  return {
    count: async (caller, windowSeconds, now) => {
      const time = now.getTime()
      const { since, requests } = running(windows.get(caller), windowSeconds * 1000, time)
      windows.delete(caller)
      windows.set(caller, { since, requests: requests + 1 })
      if (windows.size > callers) windows.delete(windows.keys().next().value!)
      return {
        requests: requests + 1,
        secondsLeft: Math.ceil((since + windowSeconds * 1000 - time) / 1000),
      }
    },
  }
}

/** A clock that was set back ends a window, too, so that nobody waits for longer than one. */
function running(window: Window | undefined, lengthMs: number, time: number): Window {
  const age = time - (window?.since ?? 0)
  return window && age >= 0 && age < lengthMs ? window : { since: time, requests: 0 }
}
