import { readShape } from '../../../schemas/readShape.ts'
import { verificationRequestSchema } from '../../../schemas/verification.ts'
import { verifySavings } from '../../../useCases/verifySavings.ts'
import { builder } from '../builder.ts'
import { householdOfInput } from '../householdOfInput.ts'
import { VerificationInput } from '../inputs/verification.ts'
import { COST_OF_ONE_DEVICE, LIST_COST, SAMPLES_PER_FIELD } from '../limits.ts'
import { VerificationType } from '../types/verification.ts'
import { withPointersInto } from '../withPointersInto.ts'

type Devices = (typeof VerificationInput.$inferInput)['before']['devices']

/** A device whose clamp reading changed at uncertain hours was measured to take four times what one of an estimate takes. */
const SUMS_OF_ONE_DEVICE = 4

const samplesIn = (devices: Devices): number =>
  devices
    .flatMap(({ modes }) => modes ?? [])
    .reduce((sum, { reading }) => sum + (reading?.samples?.watts.length ?? 0), 0)

builder.queryField('verifySavings', (t) =>
  t.field({
    type: VerificationType,
    nullable: true,
    description:
      'What was saved between two visits to one household, per device and in total, and whether it is larger than noise. What both visits share counts once; what was only better known the second time is no saving. Nothing is stored. Bad input is one error with code BAD_USER_INPUT whose extensions name every fault.',
    args: {
      input: t.arg({ type: VerificationInput, required: true, description: 'The two visits.' }),
    },
    complexity({ input: { before, after } }) {
      const devices = [...before.devices, ...after.devices]
      return {
        field:
          devices.length * SUMS_OF_ONE_DEVICE * COST_OF_ONE_DEVICE + samplesIn(devices) / SAMPLES_PER_FIELD,
        multiplier: Math.max(devices.length / LIST_COST, 1),
      }
    },
    resolve: (_root, { input }, { deps, sender }) =>
      withPointersInto(input, () =>
        verifySavings(deps, sender, readShape(verificationRequestSchema, householdOfInput(input))),
      ),
  }),
)
