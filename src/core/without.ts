/** An object without some of its fields; the others keep their order. */
export const without = <T extends object, K extends keyof T>(from: T, ...names: readonly K[]): Omit<T, K> =>
  Object.fromEntries(
    Object.entries(from).filter(([name]) => !(names as readonly PropertyKey[]).includes(name)),
  ) as Omit<T, K>
