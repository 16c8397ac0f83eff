import { DomainError } from '../fault.ts'

/** Also for an inventory of another organisation: nobody learns that it is there. */
export const unknownInventory = (id: string): DomainError =>
  new DomainError('unknown-inventory', `There is no inventory with the id "${id.slice(0, 100)}".`)
