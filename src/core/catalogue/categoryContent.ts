import type { Fault } from '../fault.ts'
import type { Category } from './category.ts'

/** A category as an editor sends it. Whether it is retired is for the acts of retiring and restoring to change, not for this. */
export type CategoryContent = Omit<Category, 'retired'> & { readonly retired?: boolean | undefined }

/** The category that such content makes. */
export const categoryFrom = (content: CategoryContent, retired: boolean): Category => ({
  code: content.code,
  name: content.name,
  group: content.group,
  aliases: content.aliases,
  defaultQuantity: content.defaultQuantity,
  retired,
  keepPowered: content.keepPowered,
  powerFactor: content.powerFactor,
  modes: content.modes,
})

/** What content may not say: another code than that of the category, or another state of retirement. */
export function fixedFieldFaults(
  content: Pick<CategoryContent, 'code' | 'retired'>,
  code: string,
  retired: boolean,
): Fault[] {
  const faults: Fault[] = []
  if (content.code !== code)
    faults.push({
      pointer: '/code',
      code: 'code-fixed',
      message: `The code must be "${code}", but it is "${content.code}": a code never changes. Make another entry, and retire this one.`,
    })
  if (content.retired !== undefined && content.retired !== retired)
    faults.push({
      pointer: '/retired',
      code: 'retired-fixed',
      message: `retired must be ${String(retired)}, as it is now, or left out: retiring and restoring are acts of their own.`,
    })
  return faults
}
