/** what a uniform of 0 counts as */
const FOR_ZERO = 2 ** -54
const MOST = 1 - 2 ** -53

/** A uniform that was reckoned from another may round to 0 or 1, where inverses have their poles: it is moved inside, in place; others, however small, stay as they are. */
export function toOpenUnit(io: Float64Array): void {
  const u = io[0]!
  if (u <= 0) io[0] = FOR_ZERO
  else if (u > MOST) io[0] = MOST
}
