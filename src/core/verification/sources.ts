import type { VerificationSource } from './verification.ts'

const IPMVP =
  'International Performance Measurement and Verification Protocol (IPMVP), Core Concepts, EVO 10000-1'
const ASHRAE = 'ASHRAE Guideline 14, Measurement of Energy, Demand, and Water Savings'

/** What a verification follows, and how well each is confirmed; years and titles are from memory. */
export const SOURCES: readonly VerificationSource[] = [
  {
    document: IPMVP,
    year: 2016,
    says: 'Retrofit isolation: option A measures the key parameter and estimates the rest from a documented source, option B measures all parameters.',
    mark: 'V',
  },
  {
    document: IPMVP,
    year: 2016,
    says: 'Option A: saving = estimated value x (parameter before - parameter after). Option B: saving = energy before - energy after, adjusted to the same conditions.',
    mark: 'M',
  },
  {
    document: ASHRAE,
    year: 2014,
    says: 'The uncertainty must be below 50 % of the saving at a confidence of 68 %.',
    mark: 'V',
  },
  {
    document: ASHRAE,
    year: 2014,
    says: 'Fractional savings uncertainty: half of the width of the saving’s interval over the saving.',
    mark: 'M',
  },
  {
    document: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM), 5.2',
    year: 2008,
    says: 'Quantities that depend on the same meter or reference are correlated, and their common part counts once.',
    mark: 'M',
  },
]
