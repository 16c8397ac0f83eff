import { CATEGORY_COLUMNS, type CategoryColumn } from '../../../../src/schemas/categoryColumns.ts'
import type { TestApp } from '../../../helpers/testApp.ts'
import { editorOf } from './editor.ts'

type Texts = Readonly<Record<string, string>>

const lampRow: Readonly<Record<CategoryColumn, string>> = {
  code: 'lava-lamp',
  name: 'Lava lamp',
  group: 'lighting-and-smart-home',
  aliases: '',
  defaultQuantity: '1',
  retired: 'false',
  keepPoweredReason: '',
  keepPoweredNote: '',
  powerFactorLow: '0.2',
  powerFactorTypical: '0.4',
  powerFactorHigh: '0.6',
  mode: 'standby',
  defaultHoursPerWeek: '100',
  yearFrom: '',
  yearTo: '',
  lowW: '0.5',
  typicalW: '1',
  highW: '2.5',
  provenance: 'sample',
  source: 'invented sample',
  n: '',
}
type Cells = Partial<Record<CategoryColumn, string>>

/** A CSV file of one invented lamp for each set of changes. None of the cells needs quotes. */
export const fileOf = (...rows: Cells[]) =>
  [CATEGORY_COLUMNS, ...rows.map((row) => CATEGORY_COLUMNS.map((name) => ({ ...lampRow, ...row })[name]))]
    .map((cells) => cells.join(','))
    .join('\r\n')

/** Sends files as an editor does: on the newest revision and with a reason, unless the test says otherwise. */
export function importerOf(service: () => TestApp) {
  const editor = editorOf(service)
  const send = async (body: unknown, query: Texts = {}, headers: Texts = {}) =>
    editor.post('/v1/catalogue/imports', {
      body,
      query: { reason: 'a test', ...query },
      headers: {
        'content-type': Array.isArray(body) ? 'application/json' : 'text/csv; charset=utf-8',
        'if-match': await editor.tagOfCatalogue(),
        ...headers,
      },
    })
  return {
    send,
    sendDry: (body: unknown, query: Texts = {}, headers: Texts = {}) =>
      send(body, { dryRun: 'true', ...query }, headers),
  }
}
