/**
 * The same promise, which may also reject where nobody waits for it: a stop may break off the work that was to wait, and Node ends a process for a rejection
 * that nobody hears. Whoever waits hears it all the same.
 */
export function heardOrNot<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => {})
  return promise
}
