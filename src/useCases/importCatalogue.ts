import { type CategoryChange, type ChangeCounts, countChanges } from '../core/catalogue/categoryChange.ts'
import { largeChangeRefusal } from '../core/catalogue/checkEdit.ts'
import type { BadRow, ImportFile } from '../core/catalogue/importFile.ts'
import { type ImportPlan, planImport } from '../core/catalogue/planImport.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import { DomainError } from '../core/fault.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import { basedOnNewest } from './basedOnNewest.ts'
import type { Deps } from './deps.ts'
import type { ChangeOptions } from './editCategory.ts'
import { storeRevision } from './storeRevision.ts'

export interface ImportOptions extends ChangeOptions {
  readonly dryRun: boolean
  /** Whether categories that the file does not speak of are retired. */
  readonly retireMissing: boolean
  readonly onProgress?: (done: number, total: number) => void
}

export interface ImportReport {
  readonly dryRun: boolean
  readonly recognised: ImportFile['recognised']
  readonly rows: number
  readonly counts: ChangeCounts & { readonly unchanged: number }
  readonly changes: readonly CategoryChange[]
  readonly largeChanges: ImportPlan['largeChanges']
  readonly badRows: readonly BadRow[]
  readonly badRowCount: number
  /** The revision that the import made; null in a dry run and where nothing changed. */
  readonly revision: Revision | null
  readonly catalogueRevision: number
}

/**
 * Takes over a file of categories as one revision, all of it or nothing. A dry run says what that would do, and every bad
 * row; it needs no basis, but one that is named must hold.
 * @throws DomainError key-required, scope-missing, precondition-required, stale-revision, faulty-import, large-change
 */
export async function importCatalogue(
  deps: Deps,
  sender: Sender,
  file: ImportFile,
  options: ImportOptions,
): Promise<ImportReport> {
  const { dryRun, basedOn, retireMissing, confirm, reason } = options
  const origin = authorizeOperator(sender, 'catalogue:edit')
  let plan: ImportPlan = { changes: [], largeChanges: [], badRows: [] }
  const stored = await storeRevision(deps, {
    action: 'import',
    origin,
    reason,
    ...(options.onProgress && { onProgress: options.onProgress }),
    decide: async (newest) => {
      if (!dryRun || basedOn !== null) await basedOnNewest(deps, newest, basedOn)
      plan = planImport(newest, file, retireMissing)
      if (dryRun) return []
      refuseBadRows(file, plan)
      if (plan.largeChanges.length > 0 && !confirm) throw largeChangeRefusal(plan.largeChanges)
      return plan.changes.map(({ after }) => after)
    },
  })
  return { ...reportOf(file, plan), dryRun, ...stored }
}

/** So many bad rows are listed; nobody mends more than that by hand. */
const SHOWN = 1_000

function refuseBadRows(file: ImportFile, plan: ImportPlan): void {
  const { recognised, badRows, badRowCount } = reportOf(file, plan)
  if (badRowCount === 0) return
  throw new DomainError(
    'faulty-import',
    `The file has ${badRowCount} fault${badRowCount === 1 ? '' : 's'}, so nothing of it was stored. badRows names each; with ` +
      'dryRun=true the answer also lists what the rest of the file would change.',
    { recognised, badRows, badRowCount },
  )
}

function reportOf(file: ImportFile, { changes, largeChanges, badRows }: ImportPlan) {
  return {
    recognised: file.recognised,
    rows: file.rows,
    counts: {
      ...countChanges(changes),
      unchanged: file.categories.length - changes.filter(({ code }) => file.codes.has(code)).length,
    },
    changes,
    largeChanges,
    badRows: [...file.badRows, ...badRows].slice(0, SHOWN),
    badRowCount: file.badRowCount + badRows.length,
  }
}
