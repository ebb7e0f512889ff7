/** Milliseconds of a clock that does not jump. */
export const now = (): number => performance.now()
