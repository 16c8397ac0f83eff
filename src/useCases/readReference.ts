import { DomainError } from '../core/fault.ts'
import { codesInUse } from '../core/reference/codesInUse.ts'
import type { ReferenceData } from '../core/reference/referenceData.ts'
import {
  type EntryOf,
  KIND_IN_WORDS,
  type ReferenceContents,
  type ReferenceKind,
} from '../core/reference/referenceEntry.ts'
import type { Deps } from './deps.ts'
import { referenceAt } from './referenceAt.ts'

export interface FoundReference<K extends ReferenceKind> extends EntryOf<K> {
  /** The revision that gave the entry this state; an edit is based on it. */
  readonly changedIn: number
  readonly referenceRevision: number
}

/**
 * One tariff or emission factor by its code, a retired one too, at a revision or the newest.
 * @throws DomainError unknown-tariff or unknown-emission-factor, naming the codes that there are; unknown-reference-revision
 */
export async function readReference<K extends ReferenceKind>(
  deps: Deps,
  kind: K,
  code: string,
  revision?: number,
): Promise<FoundReference<K>> {
  const data = await referenceAt(deps, revision)
  const content = entryIn(data, kind, code)
  return { kind, content, changedIn: data.changedIn[kind].get(code)!, referenceRevision: data.revision }
}

/** @throws DomainError unknown-tariff or unknown-emission-factor, naming the codes that there are */
export function entryIn<K extends ReferenceKind>(
  { entries }: ReferenceData,
  kind: K,
  code: string,
): ReferenceContents[K] {
  const found = entries[kind].get(code)
  if (found) return found
  const known = codesInUse(entries[kind])
  const message = `There is no ${KIND_IN_WORDS[kind]} "${code}". Known are: ${known.join(', ')}.`
  throw new DomainError(`unknown-${kind}`, message, { known })
}
