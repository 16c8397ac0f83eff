import type { Listen } from './listenForRevisions.ts'
import { pause } from './pause.ts'

export interface Watch {
  /** How often to look, whether or not anybody says that there is something new. */
  readonly everyMs: number
  /** Where it is given, there is a look at each notice, too. */
  readonly listen?: Listen | undefined
  readonly onError: (error: unknown) => void
}

/**
 * Looks for a newer catalogue again and again, so that an edit by another process is seen: at once where a notice comes, and
 * within the interval where none does. A look that fails is told, and the next one is made all the same. Its timer keeps no
 * process alive.
 * @returns what stops it, done when no look is under way any more
 */
export function watchCatalogue(
  memory: { refresh(): Promise<void> },
  { everyMs, listen, onError }: Watch,
): () => Promise<void> {
  const stopping = new AbortController()
  const watching = watch()
  const looks = new Set<Promise<void>>()
  const stopListening = listen?.(() => {
    const look = memory.refresh().catch(onError)
    looks.add(look)
    void look.finally(() => looks.delete(look))
  })
  return async () => {
    stopping.abort()
    await stopListening?.()
    await watching
    await Promise.all(looks)
  }

  async function watch(): Promise<void> {
    while (await pause(everyMs, stopping.signal)) await memory.refresh().catch(onError)
  }
}
