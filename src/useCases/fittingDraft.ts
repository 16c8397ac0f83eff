import { type Fault, FaultyInput, type Submitted } from '../core/fault.ts'
import { fixedFieldFaults } from '../core/catalogue/categoryContent.ts'
import { notPriced } from '../core/money/notPriced.ts'
import type { ReferenceDrafts } from '../core/reference/referenceDraft.ts'
import type { ReferenceKind } from '../core/reference/referenceEntry.ts'

/**
 * The draft of a tariff or an emission factor whose shape fits, and what is wrong with it beside that.
 * @throws FaultyInput with all faults where the shape does not fit
 */
export function fittingDraft<K extends ReferenceKind>(
  { raw, value, faults }: Submitted<ReferenceDrafts[K]>,
  code: string | undefined,
  retired: boolean,
): { readonly draft: ReferenceDrafts[K]; readonly faults: readonly Fault[] } {
  const tariff = typeof raw === 'object' && raw !== null && 'tariff' in raw ? raw.tariff : undefined
  const all = [...faults, ...notPriced(tariff, '/tariff')]
  if (value === null) throw new FaultyInput(all)
  return { draft: value, faults: [...all, ...fixedFieldFaults(value, code ?? value.code, retired)] }
}
