/** Mean of measured times, seconds; one or more. */
export function meanOf(seconds: readonly number[]): number {
  return seconds.reduce((sum, each) => sum + each, 0) / seconds.length
}
