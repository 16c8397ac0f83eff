import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { findCategory } from '../core/catalogue/findCategory.ts'
import type { Proposal } from '../core/proposals/proposal.ts'
import { proposalsOf } from '../core/proposals/proposalsOf.ts'
import { type ReadDevice, readDevice } from '../core/proposals/readDevice.ts'
import type { Deps } from './deps.ts'

/** By code of a category in use: the names by which organisations have devices of it with readings. */
export type NamesInUse = ReadonlyMap<string, readonly string[]>

/** Names lead where the shared catalogue leads them: what is an organisation's own category alone is left out. */
export async function namesInUse({ proposalStore }: Deps, catalogue: Catalogue): Promise<NamesInUse> {
  const names = new Map<string, string[]>()
  for (const name of await proposalStore.categoryNames()) {
    const category = findCategory(catalogue, name)
    if (category === null || category.retired) continue
    names.set(category.code, [...(names.get(category.code) ?? []), name])
  }
  return names
}

/** Every proposal of one category, from the readings of all organisations; of each series only its power is held. */
export async function categoryProposals(
  { proposalStore }: Deps,
  catalogue: Catalogue,
  code: string,
  names: readonly string[],
): Promise<Proposal[]> {
  const category = catalogue.categories.get(code)!
  const readings: ReadDevice[] = []
  for (const name of names)
    for await (const page of proposalStore.readings(name)) readings.push(...page.map(readDevice))
  const subject = { category, changedIn: catalogue.changedIn.get(code)! }
  return proposalsOf(subject, readings, await proposalStore.rejections(code))
}
