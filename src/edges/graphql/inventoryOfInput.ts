import { householdOfInput } from './householdOfInput.ts'
import { withPointersInto } from './withPointersInto.ts'
import { faultsUnder } from './editOptions.ts'

/** Does the work on an inventory's content or visit that stands at `pointer` in the mutation's input, and tells faults there. */
export const withContent = <T>(
  pointer: string,
  input: object,
  work: (content: unknown) => Promise<T>,
): Promise<T> => faultsUnder(pointer, () => withPointersInto(input, () => work(householdOfInput(input))))

/** A merge patch (RFC 7396) of what the changes name: a null takes a field away, and so it must not be left out here. */
export const patchOfChanges = (changes: object, content: unknown): unknown => ({
  ...Object.fromEntries(Object.entries(changes).filter(([, value]) => value === null)),
  ...(content as object),
})
