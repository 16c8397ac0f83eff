import { CHOSEN_KEY, looksLikeKey } from '../core/access/keyText.ts'

/** Query parameters by which keys are often sent elsewhere. */
const NAMES = new Set(['key', 'apikey', 'accesskey', 'accesstoken', 'token', 'bearer', 'authorization'])

/** True where an address (path and query) holds what may be a key: one of this service, or long enough to be a chosen one. */
export function keyInAddress(address: string): boolean {
  if (looksLikeKey(address)) return true
  const mark = address.indexOf('?')
  if (mark === -1) return false
  return [...new URLSearchParams(address.slice(mark))].some(
    ([name, value]) =>
      looksLikeKey(value) ||
      (NAMES.has(name.toLowerCase().replaceAll(/[-_]|^x-/g, '')) && CHOSEN_KEY.test(value)),
  )
}
