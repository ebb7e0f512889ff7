/**
 * The smallest whole number from `least` to `most` that is enough, where being enough never ends once it has begun; null: none is.
 *
 * @example smallestEnough((n) => n * n >= 50, 1, 100) // => 8
 */
export function smallestEnough(enough: (n: number) => boolean, least: number, most: number): number | null {
  let below = least - 1
  let at = least
  while (!enough(at)) {
    if (at >= most) return null
    below = at
    at = Math.min(most, 2 * at + 1)
  }
  while (at - below > 1) {
    const middle = Math.floor((below + at) / 2)
    if (enough(middle)) at = middle
    else below = middle
  }
  return at
}
