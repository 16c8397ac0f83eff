import type { Fault } from '../fault.ts'
import type { Category } from './category.ts'

/**
 * What an organisation's own category may not change of the shared one: a device that must stay powered must so for
 * everybody. It may give another reason and note.
 */
export function overlayFaults(own: Category, shared: Category | undefined): Fault[] {
  if (own.keepPowered !== null || !shared?.keepPowered) return []
  const message =
    `${own.code} must stay powered (${shared.keepPowered.reason}), and your own figures can't change that: ` +
    'repeat keepPowered, or use a code of your own for devices that can safely be switched off.'
  return [{ pointer: '/keepPowered', code: 'keep-powered-fixed', message }]
}
