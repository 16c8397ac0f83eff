import {
  REFERENCE_KINDS,
  type ReferenceContents,
  type ReferenceEntry,
  type ReferenceKind,
} from './referenceEntry.ts'

/** One numbered state of all tariffs and emission factors. Retired ones are in it, so that old estimates can still be made. */
export interface ReferenceData {
  readonly revision: number
  readonly entries: { readonly [K in ReferenceKind]: ReadonlyMap<string, ReferenceContents[K]> }
  /** By kind and code: the revision that gave the entry the state that it has here. */
  readonly changedIn: Readonly<Record<ReferenceKind, ReadonlyMap<string, number>>>
}

/** An entry as one revision left it. */
export interface ReferenceState {
  readonly entry: ReferenceEntry
  readonly revision: number
}

/** The state that is made up of the last states of all entries. */
export function referenceDataOf(revision: number, states: readonly ReferenceState[]): ReferenceData {
  const sorted = [...states].sort((a, b) => (a.entry.content.code < b.entry.content.code ? -1 : 1))
  const changedIn = (kind: ReferenceKind) =>
    new Map(
      sorted
        .filter(({ entry }) => entry.kind === kind)
        .map(({ entry, revision: made }) => [entry.content.code, made]),
    )
  return {
    revision,
    entries: {
      tariff: byCode(sorted.flatMap(({ entry }) => (entry.kind === 'tariff' ? [entry.content] : []))),
      'emission-factor': byCode(
        sorted.flatMap(({ entry }) => (entry.kind === 'emission-factor' ? [entry.content] : [])),
      ),
    },
    changedIn: { tariff: changedIn('tariff'), 'emission-factor': changedIn('emission-factor') },
  }
}

const byCode = <T extends { readonly code: string }>(contents: readonly T[]): ReadonlyMap<string, T> =>
  new Map(contents.map((content) => [content.code, content]))

/** Every entry, with the revision that gave it its state, by kind and then in the order of the codes. */
export function statesOf({ entries, changedIn }: ReferenceData): ReferenceState[] {
  return REFERENCE_KINDS.flatMap((kind) =>
    [...entries[kind].values()].map((content) => ({
      entry: { kind, content } as ReferenceEntry,
      revision: changedIn[kind].get(content.code)!,
    })),
  )
}
