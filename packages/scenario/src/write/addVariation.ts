/** A variation written into a file beside those that are there. */
import { isMap, parse, parseDocument } from 'yaml'
import type { Changes } from '../changes/changes.ts'
import type { ChangeValue } from '../changes/values.ts'

/**
 * The text of a scenario file with one variation more; comments and all else stay.
 *
 * @param text     a file without errors; so are the changes
 * @param name     of the variation; one of the same name gives way
 * @param changes  by path
 * @example addVariation('format: 1\n', 'more', { 'carriers.count': 5 }) // => 'format: 1\nvariations:\n  more:\n    carriers.count: 5\n'
 */
export function addVariation(text: string, name: string, changes: Changes): string {
  const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false, schema: 'core' })
  if (!isMap(document.get('variations'))) document.set('variations', document.createNode({}))
  document.setIn(
    ['variations', name],
    document.createNode(Object.fromEntries(Object.entries(changes).map(([path, value]) => [path, read(value)]))),
  )
  return document.toString({ lineWidth: 0 })
}

/** A text of a change is read as it would be in the file: `14` is a number there. */
function read(value: ChangeValue): unknown {
  return typeof value === 'string' ? parse(value, { schema: 'core', version: '1.2' }) : value
}

/**
 * The variation alone, as it stands in a file.
 *
 * @example variationText('more', { 'carriers.count': 5 }) // => 'variations:\n  more:\n    carriers.count: 5\n'
 */
export function variationText(name: string, changes: Changes): string {
  return addVariation('', name, changes)
}
