import { FaultyInput, type Submitted } from '../../../core/fault.ts'
import { queryFaults } from '../submitted.ts'

/**
 * What an edit's address says of it.
 * @throws FaultyInput naming every fault of the address and, with them, of the shape of the body
 */
export function editOf<T>({
  query,
  body,
}: {
  readonly query: Submitted<T>
  readonly body?: Submitted<unknown>
}): T {
  if (query.value === null) throw new FaultyInput([...queryFaults(query), ...(body?.faults ?? [])])
  return query.value
}
