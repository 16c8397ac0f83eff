import { base32 } from '../core/access/base32.ts'
import type { Origin } from '../core/access/caller.ts'
import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { basisOf } from '../core/estimate/basis.ts'
import type { Estimate } from '../core/estimate/estimate.ts'
import { estimate } from '../core/estimate/estimateHousehold.ts'
import type { EstimateSettings } from '../core/estimate/settings.ts'
import type { Fault, Submitted } from '../core/fault.ts'
import { checkHousehold } from '../core/inventory/checkHousehold.ts'
import { type IntakeHousehold, inventoryOf } from '../core/inventory/intake.ts'
import { personalDataFaults } from '../core/inventory/personalData.ts'
import { without } from '../core/without.ts'
import type { BatchEntry, BatchOutcome } from '../stores/inventoryStore.ts'
import { allFaults } from './allFaults.ts'
import { authorize, type Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { ID_BYTES } from './makeInventory.ts'
import { settingsNow } from './settingsAt.ts'

/** A line of a batch as it was read. */
export interface IntakeLine {
  /** From 1, as the caller counts. */
  readonly number: number
  readonly submitted: Submitted<IntakeHousehold>
}

/** What a line is answered with. */
export type LineAnswer = { readonly line: number; readonly reference: string | null } & (
  | { readonly kind: 'estimated'; readonly estimate: Estimate }
  | {
      readonly kind: 'stored' | 'already-stored'
      readonly inventoryId: string
      readonly estimateId: string
      readonly estimate: Estimate
    }
  | { readonly kind: 'faulty'; readonly faults: readonly Fault[] }
  | { readonly kind: 'line-changed' | 'reference-taken'; readonly inventoryId: string }
)

export interface IntakeOptions {
  /** Name of the batch where its households are kept; null where they are only estimated. */
  readonly batch: string | null
}

/** So many households are stored in one transaction, and so many answers are held back at most. */
const TOGETHER = 100

/**
 * Estimates households one after the other as they come in, all against one revision of the catalogue and of the tariffs, and keeps them where
 * that is asked for. Answers come in the order of the lines, and only for what is stored by then. While one part is being
 * stored the next is worked out; nothing is read ahead of that, so that whoever takes the answers slowly slows the reading down.
 * @throws DomainError key-required, scope-missing
 */
export async function* takeIn(
  deps: Deps,
  sender: Sender,
  lines: AsyncIterable<IntakeLine>,
  { batch }: IntakeOptions,
): AsyncGenerator<LineAnswer> {
  const origin = authorize(sender, 'intake')
  const catalogue = await callersCatalogue(deps, sender, undefined)
  const against = { catalogue, settings: settingsNow(deps) }
  const storing: Promise<readonly LineAnswer[]>[] = []
  for await (const part of inParts(lines, TOGETHER)) {
    const answers = part.map((line) => worked(deps, against, line, batch !== null))
    // Two parts at most are under way; the first has begun to be stored before the second was worked out.
    storing.push(
      batch === null ? Promise.resolve(answers.map(answerOf)) : heard(keep(deps, origin, batch, answers)),
    )
    if (storing.length === 2) yield* await storing.shift()!
  }
  for (const last of storing) yield* await last
}

/** A failure is told where the promise is awaited; until then nobody must take it for one that nobody hears. */
function heard<T>(work: Promise<T>): Promise<T> {
  work.catch((error: unknown) => error)
  return work
}

async function* inParts<T>(items: AsyncIterable<T>, size: number): AsyncGenerator<T[]> {
  let part: T[] = []
  for await (const item of items) {
    part.push(item)
    if (part.length < size) continue
    yield part
    part = []
  }
  if (part.length > 0) yield part
}

/** What all lines of a batch are held against. */
interface Against {
  readonly catalogue: Catalogue
  readonly settings: EstimateSettings
}

type Worked =
  | { readonly line: number; readonly reference: string | null; readonly faults: readonly Fault[] }
  | (BatchEntry & { readonly reference: string | null })

function worked(
  deps: Deps,
  { catalogue, settings }: Against,
  { number, submitted }: IntakeLine,
  kept: boolean,
): Worked {
  const { raw, value } = submitted
  const reference = value?.reference ?? null
  const faults = allFaults(submitted, [
    ...personalDataFaults(raw),
    ...checkHousehold(raw, catalogue, settings),
    ...(kept && value !== null && value.reference === undefined ? [REFERENCE_REQUIRED] : []),
  ])
  if (value === null || faults.length > 0) return { line: number, reference, faults }
  const household = without(value, 'reference', 'date', 'notes')
  const result = estimate(household, catalogue, settings)
  deps.onEstimate?.(result.total.confidence)
  const now = deps.clock().toISOString()
  const inventory = inventoryOf(value, base32(deps.random(ID_BYTES)), now)
  return {
    line: number,
    reference,
    digest: kept ? deps.digests.of(JSON.stringify(raw)) : NOTHING,
    inventory,
    estimate: {
      id: base32(deps.random(ID_BYTES)),
      inventory: inventory.id,
      visit: inventory.content.visits[0]!.date,
      madeAt: now,
      catalogueRevision: result.catalogueRevision,
      methodVersion: result.used.methodVersion,
      household,
      basis: basisOf(household, settings),
      result,
    },
  }
}

const NOTHING = new Uint8Array()
const REFERENCE_REQUIRED: Fault = {
  pointer: '/reference',
  code: 'required',
  message: 'A household that is to be kept needs a reference: your own name for it.',
}

function answerOf(work: Worked): LineAnswer {
  const { line, reference } = work
  if ('faults' in work) return { line, reference, kind: 'faulty', faults: work.faults }
  return { line, reference, kind: 'estimated', estimate: work.estimate.result }
}

async function keep(
  { inventoryStore, clock }: Deps,
  origin: Origin,
  batch: string,
  part: readonly Worked[],
): Promise<readonly LineAnswer[]> {
  const entries = part.filter((work) => 'estimate' in work)
  const event = {
    at: clock(),
    origin,
    action: 'intake.store',
    subjectKind: 'intake-batch',
    subjectId: batch,
    before: null,
    after: { firstLine: part[0]!.line, lastLine: part.at(-1)!.line },
  }
  const outcomes =
    entries.length === 0
      ? []
      : await inventoryStore.addBatch(origin.caller.organisation, batch, entries, event)
  const outcomeOf = new Map(entries.map(({ line }, i) => [line, outcomes[i]!]))
  return part.map((work) => {
    const outcome = outcomeOf.get(work.line)
    return outcome === undefined ? answerOf(work) : toldOf(work, outcome)
  })
}

function toldOf({ line, reference }: Worked, outcome: BatchOutcome): LineAnswer {
  if ('inventory' in outcome) return { line, reference, kind: outcome.kind, inventoryId: outcome.inventory }
  const { id, inventory, result } = outcome.estimate
  return { line, reference, kind: outcome.kind, inventoryId: inventory, estimateId: id, estimate: result }
}
