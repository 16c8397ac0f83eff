/** What a rule on the uncertainty of power measurement asks, and whether a reading meets it. */
export interface UncertaintyRule {
  /** The standard, with edition and clause. */
  readonly edition: string
  /** How the figures were confirmed: V read in a copy, M from memory. */
  readonly mark: 'V' | 'M'
  /** In W, at 95 % confidence. */
  readonly limitW: number
  readonly expandedUncertaintyW: number
  readonly goodEnough: boolean
}

/**
 * Whether a reading of real power is as sure as IEC 62301 asks, by the rules of its first and its second edition. They
 * differ, and programmes still quote the first.
 *
 *   ed. 1: 2 % of P for P >= 0.5 W, else 0.01 W
 *   ed. 2: 2 % of P for P >= 1.0 W, else 0.02 W; with a maximum current ratio (MCR) above 10, both times 1 + 0.08 (MCR - 10)
 *
 * Source: IEC 62301:2005 4.4 (V, as adopted in the EU-US office-equipment agreement); IEC 62301:2011 4.4.1 (M).
 * @param watts real power, W
 * @param expandedUncertaintyW half-width of the 95 % coverage interval, W
 * @param maximumCurrentRatio crest factor of the current over the power factor; without it at most 10, the stricter case
 */
export function meterIsGoodEnough(
  watts: number,
  expandedUncertaintyW: number,
  maximumCurrentRatio = 10,
): UncertaintyRule[] {
  const easing = 1 + 0.08 * Math.max(0, maximumCurrentRatio - 10)
  const rule = (edition: string, mark: UncertaintyRule['mark'], limitW: number): UncertaintyRule => {
    const goodEnough = expandedUncertaintyW <= limitW * (1 + 1e-12)
    return { edition, mark, limitW, expandedUncertaintyW, goodEnough }
  }
  return [
    rule('IEC 62301:2005 (edition 1), 4.4', 'V', watts >= 0.5 ? 0.02 * watts : 0.01),
    rule('IEC 62301:2011 (edition 2), 4.4.1', 'M', easing * (watts >= 1 ? 0.02 * watts : 0.02)),
  ]
}
