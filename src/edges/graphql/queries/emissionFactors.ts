import { z } from 'zod'
import { FaultyInput } from '../../../core/fault.ts'
import { LIMITS } from '../../../schemas/common.ts'
import { emissionFactorQuerySchema } from '../../../schemas/emissionFactor.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { listEmissionFactors } from '../../../useCases/listEmissionFactors.ts'
import { readReference } from '../../../useCases/readReference.ts'
import { builder } from '../builder.ts'
import { includeRetired, referenceRevision, revisionAsked } from '../referenceArguments.ts'
import { shownReference } from '../shownReference.ts'
import { EmissionFactorListType, NamedEmissionFactorType } from '../types/emissionFactor.ts'
import { FactorKindEnum } from '../types/tariffEnums.ts'
import { withoutNulls } from '../withoutNulls.ts'

const filterSchema = emissionFactorQuerySchema
  .pick({ region: true, kind: true, referenceRevision: true })
  .extend({ year: z.int().min(LIMITS.yearFrom).max(LIMITS.yearTo).optional(), includeRetired })

builder.queryFields((t) => ({
  emissionFactors: t.field({
    type: EmissionFactorListType,
    nullable: true,
    description: 'The published emission factors that the service has.',
    args: {
      region: t.arg.string({ description: 'Region code.' }),
      year: t.arg.int({ description: 'Of each region the factors of this year, or of the nearest.' }),
      kind: t.arg({ type: FactorKindEnum, description: 'Average or marginal alone.' }),
      includeRetired: t.arg.boolean({ description: 'Whether to list retired ones, too.' }),
      referenceRevision: t.arg.int({ description: referenceRevision }),
    },
    resolve: async (_root, args, { deps }) => {
      const { value, faults } = readShape(filterSchema, withoutNulls(args))
      if (value === null) throw new FaultyInput(faults)
      return listEmissionFactors(deps, value, { limit: Infinity })
    },
  }),
  emissionFactor: t.field({
    type: NamedEmissionFactorType,
    nullable: true,
    description:
      'One emission factor by its code, a retired one too. An unknown one is an error with code NOT_FOUND.',
    args: {
      code: t.arg.string({ required: true, description: 'Code.' }),
      referenceRevision: t.arg.int({ description: referenceRevision }),
    },
    resolve: async (_root, { code, ...asked }, { deps }) =>
      shownReference<'emission-factor'>(
        await readReference(deps, 'emission-factor', code, revisionAsked(asked)),
      ),
  }),
}))
