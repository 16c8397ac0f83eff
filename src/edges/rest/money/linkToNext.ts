/** The Link header to the next page (RFC 8288). */
export function linkToNext(
  path: string,
  query: Readonly<Record<string, string | number | undefined>>,
  cursor: string,
): string {
  const next = new URLSearchParams()
  const parameters: typeof query = { ...query, cursor }
  for (const [name, value] of Object.entries(parameters))
    if (value !== undefined) next.set(name, String(value))
  return `<${path}?${next.toString()}>; rel="next"`
}

export const LINK_HEADER = {
  Link: {
    type: 'string',
    description: 'Address of the next page, as rel="next"; absent on the last (RFC 8288)',
  },
} as const
