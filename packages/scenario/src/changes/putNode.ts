import { isMap, isScalar, isSeq, type Node, Pair, Scalar, YAMLMap } from 'yaml'

/**
 * Puts a value into the nodes of a text; keys that are missing on the way are made.
 *
 * @param onWay  told of each map and list that the way leads through
 * @returns      the step that leads nowhere; null: it was put in
 */
export function putNode(
  contents: Node | null,
  steps: readonly (string | number)[],
  value: Node,
  onWay: (part: { flow?: boolean | undefined }) => void = () => {},
): string | number | null {
  let at: Node | null = contents
  for (const [index, step] of steps.entries()) {
    const isLast = index === steps.length - 1
    if (isMap(at) || isSeq(at)) onWay(at)
    if (typeof step === 'number') {
      if (!isSeq(at) || step >= at.items.length) return step
      if (isLast) at.items[step] = value
      else at = at.items[step] as Node | null
      continue
    }
    if (!isMap(at)) return step
    const pair = findPair(at, step)
    const next = isLast ? value : ((pair?.value as Node | null | undefined) ?? new YAMLMap())
    if (pair === undefined) at.items.push(new Pair(new Scalar(step), next))
    else pair.value = next
    at = next
  }
  return null
}

/** The pair of a key, however it is written. */
export const findPair = (map: YAMLMap, key: string): Pair | undefined => map.items.find((pair) => keyText(pair.key) === key)

/** A key as it is written; null: it is no text. */
export function keyText(key: unknown): string | null {
  if (!isScalar(key)) return null
  return typeof key.value === 'string' ? key.value : (key.source ?? String(key.value))
}
