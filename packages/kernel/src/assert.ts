/** A broken program, not a wrong input: says what must hold and does not. */
export class AssertionError extends Error {
  override name = 'AssertionError'
}

/**
 * Stops the program when `condition` is false. The message is static text, so that a passing check costs one comparison.
 *
 * @throws AssertionError
 * @example (() => { try { assert(1 > 2, 'one is above two') } catch (error) { return error.message } })() // => 'one is above two'
 */
export function assert(condition: boolean, message: string): asserts condition {
  if (!condition) throw new AssertionError(message)
}
