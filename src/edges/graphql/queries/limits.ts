import { FaultyInput } from '../../../core/fault.ts'
import { cautionQuerySchema } from '../../../schemas/caution.ts'
import { limitQuerySchema } from '../../../schemas/limit.ts'
import { limitQuestionSchema } from '../../../schemas/limitCheck.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { checkAgainstLimit } from '../../../useCases/checkAgainstLimit.ts'
import { listCautions } from '../../../useCases/listCautions.ts'
import { listLimits } from '../../../useCases/listLimits.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { LimitCheckInput } from '../inputs/limitCheck.ts'
import { COST_OF_ONE_DEVICE, SAMPLES_PER_FIELD } from '../limits.ts'
import { ModeEnum } from '../types/enums.ts'
import { KeptCautionType } from '../types/keptCaution.ts'
import { LimitCheckType, LimitType } from '../types/limit.ts'
import { CautionPlaceEnum, JurisdictionEnum, LimitPurposeEnum } from '../types/limitEnums.ts'
import { withoutNulls } from '../withoutNulls.ts'
import { withPointersInto } from '../withPointersInto.ts'

const filterSchema = limitQuerySchema.omit({ limit: true, cursor: true })

builder.queryFields((t) => ({
  limits: t.field({
    type: [LimitType],
    nullable: true,
    description: 'The published limits on standby power that the service knows, in the order of their codes.',
    args: {
      jurisdiction: t.arg({ type: JurisdictionEnum, description: 'Where they hold.' }),
      purpose: t.arg({ type: LimitPurposeEnum, description: 'What they are for.' }),
      mode: t.arg({ type: ModeEnum, description: 'Mode.' }),
      placedOnMarket: t.arg.string({
        description: 'Only limits that apply to a device placed on the market on this day, YYYY-MM-DD.',
      }),
    },
    resolve: (_root, args, { deps }) => {
      const { value, faults } = readShape(filterSchema, withoutNulls(args))
      if (value === null) throw new FaultyInput(faults)
      return listLimits(deps, value, { limit: Infinity }).items
    },
  }),
  checkAgainstLimit: t.field({
    type: LimitCheckType,
    nullable: true,
    description:
      'A reading held against the published limit of its mode and year: below, above, or cannot be told, with the reason. It is no compliance test. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: {
      input: t.arg({ type: LimitCheckInput, required: true, description: 'The reading and its device.' }),
    },
    complexity: ({ input: { reading } }) =>
      COST_OF_ONE_DEVICE + (reading?.samples?.watts.length ?? 0) / SAMPLES_PER_FIELD,
    resolve: (_root, { input }, { deps, sender }) =>
      withPointersInto(input, () =>
        checkAgainstLimit(deps, sender, readShape(limitQuestionSchema, householdOfInput(input))),
      ),
  }),
  cautions: t.field({
    type: [KeptCautionType],
    nullable: true,
    description: 'The safety statements that answers carry, in the order in which they are shown.',
    args: {
      appliesTo: t.arg({ type: CautionPlaceEnum, description: 'Only those of this kind of answer.' }),
    },
    resolve: (_root, args, { deps }) => {
      const { value, faults } = readShape(cautionQuerySchema, withoutNulls(args))
      if (value === null) throw new FaultyInput(faults)
      return listCautions(deps, value.appliesTo)
    },
  }),
}))
