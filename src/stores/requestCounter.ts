/** How much of a caller's window is used, the request that was just counted among it. */
export interface Counted {
  readonly requests: number
  /** How long the window still runs, s; 1 at least. */
  readonly secondsLeft: number
}

/**
 * Counts requests by caller in windows of time: a caller's window begins with its first request, and the first one after
 * its end begins the next. Asynchronous, so that a store that several processes share can stand behind it.
 */
export interface RequestCounter {
  count(caller: string, windowSeconds: number, now: Date): Promise<Counted>
}
