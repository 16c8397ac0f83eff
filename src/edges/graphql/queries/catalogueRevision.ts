import { z } from 'zod'
import { FaultyInput } from '../../../core/fault.ts'
import { revisionNumber } from '../../../schemas/catalogueRevision.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { readRevision } from '../../../useCases/readRevision.ts'
import { builder } from '../builder.ts'
import { CatalogueRevisionType } from '../types/catalogueRevision.ts'

const argumentsSchema = z.strictObject({ number: revisionNumber })

builder.queryField('catalogueRevision', (t) =>
  t.field({
    type: CatalogueRevisionType,
    nullable: true,
    description:
      'One revision of the catalogue by its number. An unknown one is an error with code NOT_FOUND whose extensions name the newest.',
    args: { number: t.arg.int({ required: true, description: 'Number of the revision.' }) },
    resolve: async (_root, given, { deps }) => {
      const { value, faults } = readShape(argumentsSchema, given)
      if (value === null) throw new FaultyInput(faults)
      return readRevision(deps, value.number)
    },
  }),
)
