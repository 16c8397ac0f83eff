/** Fewer draws tell next to nothing of the ends of an interval. */
export const LEAST_DRAWS = 1_000

/** JCGM 101:2008, 7.2.2 asks for 10^4/(1 - p) draws or more: 10^5 for intervals of 0.9. */
export const MOST_DRAWS = 100_000

/**
 * Modes of devices times draws. A draw of one mode, with all the sums that it stands in, was measured to take 0.2 to
 * 1.2 microseconds (most where hours, power factor, price and emission factor are all uncertain), so that one request
 * holds the service for some 0.6 s at most, as the largest household does that is convolved.
 */
export const MOST_DRAWN = 500_000

/** The most draws that a household of so many modes of devices can have: 100,000 up to 5, then fewer. */
export const mostDraws = (modes: number): number => Math.min(MOST_DRAWS, Math.floor(MOST_DRAWN / modes))
