/** Mean, and the ends of the symmetric-probability coverage interval (JCGM 101:2008, 7.7). */
export interface Interval {
  readonly expected: number
  readonly low: number
  readonly high: number
}

export const scaleInterval = (interval: Interval, by: number): Interval => ({
  expected: interval.expected * by,
  low: interval.low * by,
  high: interval.high * by,
})
