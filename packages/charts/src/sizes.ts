/** Type and line patterns of all drawings. */

export const FONT = 'system-ui, sans-serif'
/** pixels */
export const TEXT_SIZE = 13
/** pixels; letters in narrow segments, notes on a drawing */
export const SMALL_SIZE = 12
/** lines of the law: carrier-limited, station-limited, space-limited */
export const LAW_DASHES: readonly (readonly number[])[] = [
  [2, 3],
  [1, 0],
  [9, 3, 2, 3],
]
