/** Bad keys from one address within a minute that are answered one by one; after them the address has to wait. */
export const BAD_KEYS_A_MINUTE = 20
const MINUTE_MS = 60_000
const ADDRESSES = 10_000
const GOOD_KEYS = 10_000

/** Counts bad keys by address, so that guessing is slowed down. Holds so many addresses and no more. */
export interface BadKeys {
  /** How many seconds the address has to wait before another key is looked at; 0 where it need not. */
  waitSeconds(address: string, now: Date): number
  countBad(address: string, now: Date): void
  /**
   * Whether a key, by its digest, was good lately. Such a key is let through from an address that has to wait: somebody
   * else behind the same proxy may be the one who guesses.
   */
  wasGood(digest: Uint8Array): boolean
  countGood(digest: Uint8Array): void
}

interface Count {
  readonly since: number
  readonly bad: number
}

const nameOf = (digest: Uint8Array) => String.fromCharCode(...digest)

export function openBadKeys(): BadKeys {
  const counts = new Map<string, Count>()
  const good = new Set<string>()
  const running = (address: string, now: Date) => {
    const count = counts.get(address)
    const age = now.getTime() - (count?.since ?? 0)
    return count && age >= 0 && age < MINUTE_MS ? count : { since: now.getTime(), bad: 0 }
  }
  return {
    waitSeconds: (address, now) => {
      const { since, bad } = running(address, now)
      return bad < BAD_KEYS_A_MINUTE ? 0 : Math.ceil((since + MINUTE_MS - now.getTime()) / 1000)
    },
    countBad: (address, now) => {
      const { since, bad } = running(address, now)
      counts.delete(address)
      counts.set(address, { since, bad: bad + 1 })
      if (counts.size > ADDRESSES) counts.delete(counts.keys().next().value!)
    },
    wasGood: (digest) => good.has(nameOf(digest)),
    countGood: (digest) => {
      const name = nameOf(digest)
      good.delete(name)
      good.add(name)
      if (good.size > GOOD_KEYS) good.delete(good.keys().next().value!)
    },
  }
}
