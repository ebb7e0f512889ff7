/** A sum that cannot be made of what was given: what was found, and what would be right. */
export class MoneyError extends RangeError {
  override readonly name = 'MoneyError'
}
