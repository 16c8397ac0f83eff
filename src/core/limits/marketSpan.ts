/** First and last day, YYYY-MM-DD, of a day, a month (YYYY-MM) or a year (YYYY). ISO dates compare as text. */
export function marketSpan(placedOnMarket: string): readonly [first: string, last: string] {
  const [year = '', month, day] = placedOnMarket.split('-')
  if (day !== undefined) return [placedOnMarket, placedOnMarket]
  if (month !== undefined) return [`${year}-${month}-01`, `${year}-${month}-31`]
  return [`${year}-01-01`, `${year}-12-31`]
}
