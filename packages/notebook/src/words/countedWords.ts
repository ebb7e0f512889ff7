import { formatNumber } from '@loopwright/charts/table'

/**
 * A count with its noun.
 *
 * @param many  default: `one` with an s
 * @example counted(1, 'path') // => '1 path'
 */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${formatNumber(count, 0)} ${count === 1 ? one : many}`
}
