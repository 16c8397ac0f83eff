import { setTimeout as wait } from 'node:timers/promises'

/**
 * Looks for a newer catalogue again and again, so that an edit by another process is seen within the interval. A look
 * that fails is told and the next one is made all the same. Its timer keeps no process alive.
 * @returns what stops it, done when no look is under way any more
 */
export function watchCatalogue(
  memory: { refresh(): Promise<void> },
  everyMs: number,
  onError: (error: unknown) => void,
): () => Promise<void> {
  const stopping = new AbortController()
  const watching = watch()
  return async () => {
    stopping.abort()
    await watching
  }

  async function watch(): Promise<void> {
    while (await passed(everyMs, stopping.signal)) await memory.refresh().catch(onError)
  }
}

/** Waits; false where it was stopped. */
async function passed(ms: number, signal: AbortSignal): Promise<boolean> {
  try {
    await wait(ms, undefined, { signal, ref: false })
    return true
  } catch (error) {
    if (signal.aborted) return false
    throw error
  }
}
