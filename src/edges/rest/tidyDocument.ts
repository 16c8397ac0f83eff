type Json = null | boolean | number | string | Json[] | JsonObject
// A Record cannot refer to itself, an interface can.
interface JsonObject {
  [key: string]: Json
}
type Named = Record<string, Json>

/**
 * The generator names every schema twice, as `X` for answers and `XInput` for requests, whether or not anything
 * uses it and whether or not the two differ. This keeps what is used, gives both the plain name where they are the
 * same or only one is used, and unwraps a choice that has one member so far.
 */
export function tidyDocument<T>(document: T): T {
  const copy = JSON.parse(JSON.stringify(document)) as Json
  const whole = unwrapSingleChoices(copy) as JsonObject & { components: { schemas: Named } }
  const { components, ...rest } = whole
  const used = pick(components.schemas, reachable(rest, components.schemas))
  const kept = namesThatDiffer(used)
  const schemas = Object.fromEntries(
    Object.entries(used).map(([name, schema]) => [plainName(name, kept), schema]),
  )
  return JSON.parse(withPlainNames({ ...rest, components: { ...components, schemas } }, kept)) as T
}

const REFERENCE = /#\/components\/schemas\/([A-Za-z0-9]+)/g
const plainName = (name: string, kept: ReadonlySet<string>) =>
  kept.has(name) ? name : name.replace(/Input$/, '')
const withPlainNames = (value: Json, kept: ReadonlySet<string>) =>
  JSON.stringify(value).replaceAll(
    REFERENCE,
    (_, name: string) => `#/components/schemas/${plainName(name, kept)}`,
  )
const referencesOf = (value: Json) => [...JSON.stringify(value).matchAll(REFERENCE)].map(([, name]) => name!)
const pick = (schemas: Named, names: ReadonlySet<string>): Named =>
  Object.fromEntries(Object.entries(schemas).filter(([name]) => names.has(name)))

function reachable(from: Json, schemas: Named): ReadonlySet<string> {
  const found = new Set(referencesOf(from))
  for (const name of found) for (const next of referencesOf(schemas[name] ?? null)) found.add(next)
  return found
}

/** The request schemas that must keep their own name, since the answer schema of the same name is another. */
function namesThatDiffer(used: Named): ReadonlySet<string> {
  let differing: ReadonlySet<string> = new Set()
  for (;;) {
    const next = new Set(
      Object.keys(used).filter((name) => {
        const other = name.endsWith('Input') ? used[name.replace(/Input$/, '')] : undefined
        return (
          other !== undefined && withPlainNames(used[name]!, differing) !== withPlainNames(other, differing)
        )
      }),
    )
    if (next.size === differing.size) return differing
    differing = next
  }
}

function unwrapSingleChoices(value: Json): Json {
  if (Array.isArray(value)) return value.map(unwrapSingleChoices)
  if (typeof value !== 'object' || value === null) return value
  const { oneOf, ...rest } = Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, unwrapSingleChoices(inner)]),
  )
  if (oneOf === undefined) return rest
  if (!Array.isArray(oneOf) || oneOf.length !== 1) return { ...rest, oneOf }
  return { ...(oneOf[0] as JsonObject), ...rest }
}
