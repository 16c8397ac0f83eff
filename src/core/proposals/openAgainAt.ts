/** The service's own rule, no source: a quarter more readings narrow an interval by a tenth, and fewer than eight say little. */
const SHARE = 0.25
const FEWEST = 8

/** How many readings there must be until a proposal that was answered at `n` readings is open again. */
export const openAgainAt = (n: number): number => n + Math.max(FEWEST, Math.ceil(SHARE * n))
