type Parameter = string | number | boolean | Date | undefined

/** The address of a list's next page, as the header Link names it (RFC 8288). */
export function linkToNext(path: string, query: Readonly<Record<string, Parameter>>, cursor: string): string {
  const next = new URLSearchParams()
  for (const [name, value] of Object.entries<Parameter>({ ...query, cursor }))
    if (value !== undefined) next.set(name, value instanceof Date ? value.toISOString() : String(value))
  return `<${path}?${next.toString()}>; rel="next"`
}

/** How the header is described, beside the answer that carries it. */
export const LINK_HEADER = {
  Link: {
    type: 'string',
    description: 'Address of the next page, as rel="next"; absent on the last (RFC 8288)',
  },
} as const
