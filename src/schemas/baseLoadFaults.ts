import { type Fault, FaultyInput } from '../core/fault.ts'

/** Faults that are named at once; a file with more is not worth a longer answer. */
const MOST_FAULTS = 100

/** Gathers what is wrong with a file, line by line. */
export class FaultList {
  readonly faults: Fault[] = []

  /** @throws FaultyInput where the list is full */
  add(line: number | null, code: string, message: string): void {
    const place = line === null ? '' : `Line ${line}: `
    this.faults.push({ pointer: line === null ? '' : `/lines/${line}`, code, message: `${place}${message}` })
    if (this.faults.length < MOST_FAULTS) return
    const rest = `There are ${MOST_FAULTS} faults up to here; what comes after them was not read.`
    throw new FaultyInput([...this.faults, { pointer: '', code: 'too-many-faults', message: rest }])
  }

  /** @throws FaultyInput where there are any */
  refuse(): void {
    if (this.faults.length > 0) throw new FaultyInput(this.faults)
  }

  /** @throws FaultyInput always: nothing after this can be read */
  stop(line: number | null, code: string, message: string): never {
    this.add(line, code, message)
    throw new FaultyInput(this.faults)
  }
}

/** A piece of a bad value for a message, without what could garble it. */
export const shown = (text: string) => JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text)
