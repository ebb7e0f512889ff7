/**
 * Values by the names of their places: a document shows `{ "working": 12.5 }` where the engine keeps a bare list.
 *
 * @throws RangeError  if there are more values than names, or fewer
 * @example named(['a', 'b'], [1, 2]) // => { a: 1, b: 2 }
 */
export function named<T>(names: readonly string[], values: readonly T[]): Record<string, T> {
  if (names.length !== values.length) throw new RangeError(`${values.length} values for ${names.length} names`)
  return Object.fromEntries(names.map((name, index) => [name, values[index]!]))
}
