import { FaultyInput } from '../../../core/fault.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { tariffQuerySchema } from '../../../schemas/tariff.ts'
import { listTariffs } from '../../../useCases/listTariffs.ts'
import { readTariff } from '../../../useCases/readTariff.ts'
import { builder } from '../builder.ts'
import { NamedTariffType } from '../types/tariff.ts'
import { withoutNulls } from '../withoutNulls.ts'

const filterSchema = tariffQuerySchema.pick({ currency: true, validOn: true })

builder.queryFields((t) => ({
  tariffs: t.field({
    type: [NamedTariffType],
    nullable: true,
    description: 'The tariffs that the service knows, in the order of their codes.',
    args: {
      currency: t.arg.string({ description: 'ISO 4217 code.' }),
      validOn: t.arg.string({ description: 'Only tariffs that hold on this day, YYYY-MM-DD.' }),
    },
    resolve: (_root, args, { deps }) => {
      const { value, faults } = readShape(filterSchema, withoutNulls(args))
      if (value === null) throw new FaultyInput(faults)
      return listTariffs(deps, value, { limit: Infinity }).items
    },
  }),
  tariff: t.field({
    type: NamedTariffType,
    nullable: true,
    description: 'One tariff by its code. An unknown one is an error with code NOT_FOUND.',
    args: { code: t.arg.string({ required: true, description: 'Code.' }) },
    resolve: (_root, { code }, { deps }) => readTariff(deps, code),
  }),
}))
