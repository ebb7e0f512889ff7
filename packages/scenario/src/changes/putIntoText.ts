/** Values put into the text of a scenario file, each with a comment that says where it comes from; all other text and comments stay. */
import { isMap, isScalar, type Node, Pair, parseDocument, Scalar, YAMLMap } from 'yaml'
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
    if (!isMap(at)) return false
    // a comment has no room in a map on one line
    if (from !== '') at.flow = false
    const pair = at.items.find(({ key }) => isScalar(key) && String(key.value) === String(step))
    if (index === steps.length - 1) {
      const node = parseDocument(value, { schema: 'core' }).contents as Node | null
      if (node === null) return false
      if (from !== '') node.comment = ` ${from.replaceAll(/\s+/g, ' ')}`
      if (pair === undefined) at.items.push(new Pair(new Scalar(String(step)), node))
      else pair.value = node
      return true
    }
    if (pair === undefined || pair.value === null) {
      const made: YAMLMap = new YAMLMap()
      if (pair === undefined) at.items.push(new Pair(new Scalar(String(step)), made))
      else pair.value = made
      at = made
    } else at = pair.value as Node
  }
  return false
}
