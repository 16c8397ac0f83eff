/**
 * A JSON value changed by a merge patch (RFC 7396, section 2): an object's members replace or, where null, remove those of
 * the same name, at every depth; anything else, a list too, replaces the whole. Neither argument is changed. A member named
 * __proto__ becomes a field like any other, which no schema lets through, and never the prototype of anything.
 */
export function mergePatch(target: unknown, patch: unknown): unknown {
  if (!isRecord(patch)) return patch
  const merged = new Map(isRecord(target) ? Object.entries(target) : [])
  for (const [name, value] of Object.entries(patch))
    if (value === null) merged.delete(name)
    else merged.set(name, mergePatch(merged.get(name), value))
  return Object.fromEntries(merged)
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
