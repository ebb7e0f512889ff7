const LEAST = 2 ** -54
const MOST = 1 - 2 ** -53

/** A uniform that was reckoned from another may round to 0 or 1, where inverses have their poles: the nearest value inside, in place. */
export function toOpenUnit(io: Float64Array): void {
  io[0] = Math.min(MOST, Math.max(LEAST, io[0]!))
}
