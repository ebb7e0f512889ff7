/** Values put into the text of a scenario file, each with a comment that says where it comes from; all other text and comments stay. */
import { type Node, parseDocument } from 'yaml'
import { putNode } from './putNode.ts'
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
  const node = parseDocument(value, { schema: 'core' }).contents as Node | null
  if (node === null) return false
  if (from === '') return putNode(contents, steps, node) === null
  node.comment = ` ${from.replaceAll(/\s+/g, ' ')}`
  const broken = (part: { flow?: boolean | undefined }): void => {
    // a comment has no room in a map on one line
    part.flow = false
  }
  return putNode(contents, steps, node, broken) === null
}
