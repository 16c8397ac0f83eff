/** Does work one at a time, in the order in which it is asked for; work that fails does not keep the next from its turn. */
export function inTurn(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve()
  return (work) => {
    const mine = last.then(work)
    // The next in turn starts whether or not this one fails; who asked for this one hears of it.
    last = mine.catch((error: unknown) => error)
    return mine
  }
}
