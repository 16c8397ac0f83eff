/**
 * True where an Accept header lets a media type through (RFC 9110, 12.5.1). The most precise range that covers
 * the type counts, and it says no with q=0. No header accepts everything.
 */
export const accepts = (header: string | undefined, mediaType: string): boolean =>
  qualityOf(header, mediaType) > 0

/** Of the media types that an answer can be given in, the one that the Accept header likes best; of equals the first. */
export function preferred<T extends string>(header: string | undefined, mediaTypes: readonly T[]): T | null {
  const best = Math.max(...mediaTypes.map((mediaType) => qualityOf(header, mediaType)))
  return best > 0 ? mediaTypes.find((mediaType) => qualityOf(header, mediaType) === best)! : null
}

function qualityOf(header: string | undefined, mediaType: string): number {
  if (header === undefined || header.trim() === '') return 1
  const [type] = mediaType.split('/')
  const byPrecision = [mediaType, `${type}/*`, '*/*']
  const ranges = header.split(',').map(readRange)
  const closest = byPrecision.flatMap((wanted) => ranges.filter(({ range }) => range === wanted))[0]
  return closest?.quality ?? 0
}

function readRange(text: string): { range: string; quality: number } {
  const [range = '', ...parameters] = text.split(';').map((part) => part.trim().toLowerCase())
  const quality = parameters.find((parameter) => parameter.startsWith('q='))?.slice(2)
  return { range, quality: quality === undefined ? 1 : Number(quality) || 0 }
}
