/** Keeps what was loaded for the last used names. A load that finds nothing, or fails, is not kept. */
export function lastUsed<Name, T>(
  limit: number,
  load: (name: Name) => Promise<T | null>,
): (name: Name) => Promise<T | null> {
  // A Map keeps the order of insertion: the first key is the one that was not used for longest.
  const kept = new Map<Name, Promise<T | null>>()
  return async (name) => {
    const loading = kept.get(name) ?? load(name)
    kept.delete(name)
    kept.set(name, loading)
    if (kept.size > limit) kept.delete(kept.keys().next().value!)
    try {
      const found = await loading
      if (found === null) kept.delete(name)
      return found
    } catch (error) {
      kept.delete(name)
      throw error
    }
  }
}
