const known = new Map<string, number>()
const CURRENCIES: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'))

/** Whether it is a three-letter code of ISO 4217 that is, or was, a currency. */
export const isCurrency = (code: string): boolean => CURRENCIES.has(code)

/** Decimals of a currency's minor unit by ISO 4217, as ECMA-402 has them: 2 for EUR, 0 for JPY, 3 for KWD. */
export function minorUnit(currency: string): number {
  const digits =
    known.get(currency) ??
    new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits!
  known.set(currency, digits)
  return digits
}
