import { FaultyInput } from '../../core/fault.ts'
import { pointerIntoInput } from './pointerIntoInput.ts'

/** Does the work, and turns the pointers of its faults into those of the GraphQL input. */
export async function withPointersInto<T>(input: unknown, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof FaultyInput)) throw error
    throw new FaultyInput(
      error.faults.map((fault) => ({ ...fault, pointer: pointerIntoInput(fault.pointer, input) })),
    )
  }
}
