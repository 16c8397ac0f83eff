interface Years {
  /** First and last year of manufacture; null is open. */
  readonly yearFrom: number | null
  readonly yearTo: number | null
}

/** Years of manufacture as one word of an address: `all`, `to-2009`, `2010-2012` or `from-2013`. */
export function yearsName({ yearFrom, yearTo }: Years): string {
  if (yearFrom === null) return yearTo === null ? 'all' : `to-${yearTo}`
  return yearTo === null ? `from-${yearFrom}` : `${yearFrom}-${yearTo}`
}

const NAME = /^(?:all|to-(?<last>\d{4})|from-(?<first>\d{4})|(?<from>\d{4})-(?<to>\d{4}))$/

/** The years that such a word names; null where it names none. */
export function yearsNamed(name: string): Years | null {
  const groups = NAME.exec(name)?.groups
  if (NAME.exec(name) === null) return null
  const yearOf = (text: string | undefined) => (text === undefined ? null : Number(text))
  return {
    yearFrom: yearOf(groups?.['from'] ?? groups?.['first']),
    yearTo: yearOf(groups?.['to'] ?? groups?.['last']),
  }
}
