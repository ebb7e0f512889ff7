/** Running figures of a measure in an array, so that no number is boxed. */

/** count, mean and spread, updated one value at a time (Welford 1962) in an array of its own: count, mean, sum of squares, least, largest; last the value to add. */
export const TALLY = 6
/** place of the value that the next addToTally adds */
export const VALUE = 5

/** Adds the value at VALUE. */
export function addToTally(tally: Float64Array): void {
  const value = tally[VALUE]!
  const count = tally[0]! + 1
  const difference = value - tally[1]!
  const mean = tally[1]! + difference / count
  tally[0] = count
  tally[1] = mean
  tally[2]! += difference * (value - mean)
  if (count === 1 || value < tally[3]!) tally[3] = value
  if (count === 1 || value > tally[4]!) tally[4] = value
}
