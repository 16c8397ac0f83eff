import { FaultyInput } from '../../../core/fault.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { tariffQuerySchema } from '../../../schemas/tariff.ts'
import { listTariffs } from '../../../useCases/listTariffs.ts'
import { readReference } from '../../../useCases/readReference.ts'
import { builder } from '../builder.ts'
import { includeRetired, referenceRevision, revisionAsked } from '../referenceArguments.ts'
import { shownReference } from '../shownReference.ts'
import { NamedTariffType } from '../types/tariff.ts'
import { withoutNulls } from '../withoutNulls.ts'

const filterSchema = tariffQuerySchema
  .pick({ currency: true, validOn: true, referenceRevision: true })
  .extend({ includeRetired })

builder.queryFields((t) => ({
  tariffs: t.field({
    type: [NamedTariffType],
    nullable: true,
    description: 'The tariffs that the service knows, in the order of their codes.',
    args: {
      currency: t.arg.string({ description: 'ISO 4217 code.' }),
      validOn: t.arg.string({ description: 'Only tariffs that hold on this day, YYYY-MM-DD.' }),
      includeRetired: t.arg.boolean({ description: 'Whether to list retired ones, too.' }),
      referenceRevision: t.arg.int({ description: referenceRevision }),
    },
    resolve: async (_root, args, { deps }) => {
      const { value, faults } = readShape(filterSchema, withoutNulls(args))
      if (value === null) throw new FaultyInput(faults)
      const { items, changedIn } = await listTariffs(deps, value, { limit: Infinity })
      return items.map((content) =>
        shownReference<'tariff'>({ content, changedIn: changedIn.get(content.code)! }),
      )
    },
  }),
  tariff: t.field({
    type: NamedTariffType,
    nullable: true,
    description: 'One tariff by its code, a retired one too. An unknown one is an error with code NOT_FOUND.',
    args: {
      code: t.arg.string({ required: true, description: 'Code.' }),
      referenceRevision: t.arg.int({ description: referenceRevision }),
    },
    resolve: async (_root, { code, ...asked }, { deps }) =>
      shownReference<'tariff'>(await readReference(deps, 'tariff', code, revisionAsked(asked))),
  }),
}))
