const GROUPS = 8

/**
 * What counts as one caller's address: an IPv4 address, or the network of 64 bits that an IPv6 address is in, since one
 * connection usually has all of it (RFC 6177).
 */
export function networkOf(address: string): string {
  if (!address.includes(':') || address.startsWith('::ffff:')) return address
  const parts = address.split('::').map((part) => part.split(':').filter((group) => group !== ''))
  const [head = [], tail] = parts
  const zeros = new Array<string>(Math.max(GROUPS - head.length - (tail?.length ?? 0), 0)).fill('0')
  return [...head, ...(tail === undefined ? [] : zeros), ...(tail ?? [])].slice(0, GROUPS / 2).join(':')
}
