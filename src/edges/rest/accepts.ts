/**
 * True where an Accept header lets a media type through (RFC 9110, 12.5.1). The most precise range that covers
 * the type counts, and it says no with q=0. No header accepts everything.
 */
export function accepts(header: string | undefined, mediaType: string): boolean {
  if (header === undefined || header.trim() === '') return true
  const [type] = mediaType.split('/')
  const byPrecision = [mediaType, `${type}/*`, '*/*']
  const ranges = header.split(',').map(readRange)
  const closest = byPrecision.flatMap((wanted) => ranges.filter(({ range }) => range === wanted))[0]
  return closest !== undefined && closest.quality > 0
}

function readRange(text: string): { range: string; quality: number } {
  const [range = '', ...parameters] = text.split(';').map((part) => part.trim().toLowerCase())
  const quality = parameters.find((parameter) => parameter.startsWith('q='))?.slice(2)
  return { range, quality: quality === undefined ? 1 : Number(quality) || 0 }
}
