/**
 * Makes calls at the same time share one run. Who calls while a run is under way shares the run after it, since this one
 * may have looked already when the caller's own edit was stored.
 */
export function oneForAll(work: () => Promise<void>): () => Promise<void> {
  let running: Promise<void> | null = null
  let next: Promise<void> | null = null
  const run = () => {
    next = null
    running = work().finally(() => (running = null))
    return running
  }
  return () => next ?? (running === null ? run() : (next = running.then(run, run)))
}
