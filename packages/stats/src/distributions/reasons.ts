/** Reasons in plain words, for parameters of any distribution; a list, empty where there is nothing to say. */

/** "mean is -1; it must be above 0" */
export function notAboveZero(name: string, value: unknown): string[] {
  return typeof value === 'number' && value > 0 && value < Infinity ? [] : [`${name} is ${shown(value)}; it must be above 0`]
}

export function belowZero(name: string, value: unknown): string[] {
  return typeof value === 'number' && value >= 0 && value < Infinity ? [] : [`${name} is ${shown(value)}; it must be 0 or more`]
}

export function notShare(name: string, value: unknown): string[] {
  return typeof value === 'number' && value >= 0 && value <= 1 ? [] : [`${name} is ${shown(value)}; it must lie in 0 … 1`]
}

/** min < max, after both have been found to be numbers */
export function notRising(lowName: string, low: number, highName: string, high: number): string[] {
  return low < high ? [] : [`${lowName} is ${low} and ${highName} is ${high}; ${lowName} must be below ${highName}`]
}

/** min ≤ mode ≤ max and min < max: an expert's triple */
export function notTriple(d: { readonly min: number; readonly mode: number; readonly max: number }): string[] {
  const found = [...belowZero('min', d.min), ...belowZero('mode', d.mode), ...belowZero('max', d.max)]
  if (found.length > 0) return found
  const order = notRising('min', d.min, 'max', d.max)
  if (order.length > 0) return order
  return d.mode < d.min || d.mode > d.max ? [`mode is ${d.mode}; it must lie in min … max, ${d.min} … ${d.max}`] : []
}

/** a list of one or more values, each 0 or more; rows count from 1 */
export function notValues(name: string, values: unknown): string[] {
  if (!Array.isArray(values) || values.length === 0) return [`${name} is empty; give at least one value`]
  const row = values.findIndex((value) => belowZero('', value).length > 0)
  return row < 0 ? [] : [`${name} holds ${shown(values[row])} in row ${row + 1}; each must be 0 or more`]
}

function shown(value: unknown): string {
  return typeof value === 'number' || value === null || value === undefined ? String(value) : JSON.stringify(value)
}
