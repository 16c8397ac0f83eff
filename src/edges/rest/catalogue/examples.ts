import type { z } from 'zod'
import type { categoryContentSchema, categoryPatchSchema } from '../../../schemas/catalogueEdit.ts'
import type { importReportSchema } from '../../../schemas/catalogueEditReport.ts'
import type {
  comparisonSchema,
  restoredRevisionSchema,
  revisionAnswerSchema,
  revisionListSchema,
  revisionSchema,
} from '../../../schemas/catalogueRevision.ts'

/** The examples of the API description for edits and history; all of it is invented. */
const lavaLamp = {
  code: 'lava-lamp',
  name: 'Lava lamp',
  group: 'lighting-and-smart-home',
  aliases: ['wax lamp'],
  defaultQuantity: 1,
  keepPowered: null,
  powerFactor: { low: 0.4, typical: 0.6, high: 0.9 },
  modes: [
    {
      mode: 'standby',
      defaultHoursPerWeek: 100,
      draws: [
        {
          yearFrom: null,
          yearTo: null,
          lowW: 0.2,
          typicalW: 0.5,
          highW: 1.2,
          provenance: { kind: 'sample', citation: null, n: null },
        },
      ],
    },
  ],
} satisfies z.input<typeof categoryContentSchema>
const { code, name, group, aliases, defaultQuantity, keepPowered, powerFactor, modes } = lavaLamp
const storedLamp = {
  code,
  name,
  group,
  aliases,
  defaultQuantity,
  retired: false,
  keepPowered,
  powerFactor,
  modes,
} as const
const renamedLamp = { ...storedLamp, aliases: ['wax lamp', 'bubble lamp'] }

export const CATALOGUE_REQUEST_EXAMPLES = {
  createCategory: { lamp: { summary: 'A kind of device that there was none of', value: lavaLamp } },
  replaceCategory: {
    alias: { summary: 'With another alias', value: { ...lavaLamp, aliases: renamedLamp.aliases } },
  },
  patchCategory: {
    alias: {
      summary: 'The list of aliases, as a whole',
      value: { aliases: renamedLamp.aliases } satisfies z.input<typeof categoryPatchSchema>,
    },
  },
  importCatalogue: { list: { summary: 'One category', value: [storedLamp] } },
} as const

const exampleRevision = {
  number: 3,
  action: 'change',
  author: { organisation: 'example-utility', keyId: 'mfrggzdfmztwq2lk' },
  reason: 'People call it so',
  at: '2026-02-03T10:15:00.000Z',
} satisfies z.output<typeof revisionSchema>

export const exampleRevisionList = {
  items: [exampleRevision],
  nextCursor: null,
  catalogueRevision: 3,
} satisfies z.output<typeof revisionListSchema>

const fields = [{ pointer: '/aliases', before: storedLamp.aliases, after: renamedLamp.aliases }]
const exampleChange = { code, name, kind: 'changed' as const, fields }
const counts = { added: 0, changed: 1, retired: 0, restored: 0 }

export const exampleRevisionAnswer = {
  ...exampleRevision,
  changeCount: 1,
  changes: [{ ...exampleChange, before: storedLamp, after: renamedLamp }],
  nextCursor: null,
} satisfies z.output<typeof revisionAnswerSchema>

export const exampleComparison = {
  from: 2,
  to: 3,
  counts,
  changes: [exampleChange],
  nextCursor: null,
} satisfies z.output<typeof comparisonSchema>

export const exampleRestoredRevision = {
  restored: 2,
  revision: { ...exampleRevision, number: 4, action: 'restore-revision', reason: 'That was a mistake' },
  counts,
  catalogueRevision: 4,
} satisfies z.output<typeof restoredRevisionSchema>

export const exampleImportReport = {
  dryRun: false,
  recognised: { delimiter: ';', decimal: ',' },
  rows: 1,
  counts: { ...counts, unchanged: 0 },
  changes: [exampleChange],
  largeChanges: [],
  badRows: [],
  badRowCount: 0,
  revision: { ...exampleRevision, action: 'import', reason: 'Figures of the spring campaign' },
  catalogueRevision: 3,
} satisfies z.output<typeof importReportSchema>
