import { z } from 'zod'
import { FaultyInput } from '../../../core/fault.ts'
import { revisionNumber } from '../../../schemas/catalogueRevision.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { listReferenceRevisions } from '../../../useCases/listRevisions.ts'
import { readReferenceRevision } from '../../../useCases/readReferenceRevision.ts'
import { REFERENCE_REVISION_LIST } from '../../referenceLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { ReferenceRevisionType } from '../types/referenceRevision.ts'
import { withoutNulls } from '../withoutNulls.ts'

const NO_FILTER = { value: {}, faults: [], raw: null }
const argumentsSchema = z.strictObject({ number: revisionNumber })

builder.queryField('referenceRevisions', (t) =>
  t.connection(
    {
      type: ReferenceRevisionType,
      nullable: true,
      description: 'The revisions of tariffs and emission factors, newest first: who edited, when and why.',
      complexity: pageCost,
      resolve: async (_root, pageArguments, { deps }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls(pageArguments))
        const { window, filter } = listWindow(REFERENCE_REVISION_LIST, page, NO_FILTER)
        const { total, ...part } = await listReferenceRevisions(deps, window)
        return { ...connectionOf(REFERENCE_REVISION_LIST, part, filter), totalCount: total }
      },
    },
    {
      name: 'ReferenceRevisionConnection',
      description: 'A page of revisions.',
      fields: (connection) => ({
        totalCount: connection.exposeInt('totalCount', { description: 'Number of revisions, on all pages.' }),
      }),
    },
    { name: 'ReferenceRevisionEdge', description: 'A revision and its place in the list.' },
  ),
)

builder.queryField('referenceRevision', (t) =>
  t.field({
    type: ReferenceRevisionType,
    nullable: true,
    description:
      'One revision of tariffs and emission factors by its number. An unknown one is an error with code NOT_FOUND whose extensions name the newest.',
    args: { number: t.arg.int({ required: true, description: 'Number of the revision.' }) },
    resolve: async (_root, given, { deps }) => {
      const { value, faults } = readShape(argumentsSchema, given)
      if (value === null) throw new FaultyInput(faults)
      return readReferenceRevision(deps, value.number)
    },
  }),
)
