/** Values put into the text of a scenario file, each with a comment that says where it comes from; all other text and comments stay. */
import { isMap, isScalar, isSeq, type Node, Pair, parseDocument, Scalar, YAMLMap } from 'yaml'
import { parsePath } from './variations.ts'

/** A value by its path. */
export interface TextChange {
  /** such as `stations.S4.work.wire` */
  readonly path: string
  /** as a file would say it, on one line: `45 s ± 15 %`, `{ small: 40 s, large: 50 s }` */
  readonly value: string
  /** where it comes from; stands behind it as a comment. '': none */
  readonly from: string
}

/**
 * The text with values put in.
 *
 * @param text  of a file that reads without an error
 * @returns     null where a path leads through something that is no map
 * @example putIntoText('carriers: { count: 4 }\n', [{ path: 'carriers.count', value: '5', from: 'the order' }]) // => 'carriers:\n  count: 5 # the order\n'
 */
export function putIntoText(text: string, changes: readonly TextChange[]): string | null {
  const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false, schema: 'core' })
  for (const { path, value, from } of changes) {
    const steps = parsePath(path)
    if (steps === null || !put(document.contents, steps, value, from)) return null
  }
  return document.toString({ lineWidth: 0 })
}

function put(contents: Node | null, steps: readonly (string | number)[], value: string, from: string): boolean {
  let at = contents
  for (const [index, step] of steps.entries()) {
    const last = index === steps.length - 1
    if (isSeq(at) && typeof step === 'number') {
      const node: Node | null = last ? made(value, from) : (at.items[step] as Node | null)
      if (node === null || at.items[step] === undefined) return false
      if (from !== '') at.flow = false
      if (last) at.items[step] = node
      at = node
      continue
    }
    if (!isMap(at)) return false
    // a comment has no room in a map on one line
    if (from !== '') at.flow = false
    const pair = at.items.find(({ key }) => isScalar(key) && String(key.value) === String(step))
    if (last) {
      const node = made(value, from)
      if (node === null) return false
      if (pair === undefined) at.items.push(new Pair(new Scalar(String(step)), node))
      else pair.value = node
      return true
    }
    if (pair === undefined || pair.value === null) {
      const map: YAMLMap = new YAMLMap()
      if (pair === undefined) at.items.push(new Pair(new Scalar(String(step)), map))
      else pair.value = map
      at = map
    } else at = pair.value as Node
  }
  return true
}

/** The value as a file says it, with where it comes from; null: it is none. */
function made(value: string, from: string): Node | null {
  const node = parseDocument(value, { schema: 'core' }).contents as Node | null
  if (node !== null && from !== '') node.comment = ` ${from.replaceAll(/\s+/g, ' ')}`
  return node
}
