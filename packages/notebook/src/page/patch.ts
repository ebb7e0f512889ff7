/** What turns one piece of JSON data into another: a new value, or changes within. */
export type Patch = { readonly to: unknown } | { readonly in: Readonly<Record<string, Patch>> }

/**
 * What turns `base` into `other`; null where they are equal. Containers of unlike size are replaced as a whole, others part by part.
 *
 * @example JSON.stringify(difference([1, 2], [1, 3])) // => '{"in":{"1":{"to":3}}}'
 */
export function difference(base: unknown, other: unknown): Patch | null {
  if (Object.is(base, other)) return null
  if (!isContainer(base) || !isContainer(other) || Array.isArray(base) !== Array.isArray(other)) return { to: other }
  const keys = Object.keys(base)
  const otherKeys = Object.keys(other)
  if (keys.length !== otherKeys.length || otherKeys.some((key) => !Object.hasOwn(base, key))) return { to: other }
  const parts: Record<string, Patch> = {}
  for (const key of keys) {
    const part = difference(base[key], other[key])
    if (part !== null) parts[key] = part
  }
  return Object.keys(parts).length === 0 ? null : { in: parts }
}

/** `base` with the differences put in; `base` itself is left as it is. */
export function patched(base: unknown, patch: Patch | null): unknown {
  if (patch === null) return base
  if ('to' in patch) return patch.to
  const copy = (Array.isArray(base) ? [...base] : { ...(base as object) }) as Record<string, unknown>
  for (const [key, part] of Object.entries(patch.in)) copy[key] = patched(copy[key], part)
  return copy
}

function isContainer(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}
