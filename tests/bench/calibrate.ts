const TURNS = 10_000
/** calls before the clock starts: the compiler then takes the function as a whole, and the code of all samples is the same */
const WARM = 500
const SAMPLES = 15
const CALLS = 50
const PLACES = 4096

/**
 * A small loop whose time tells how fast this machine is just now, so that ratios to it hold on another machine or a busy one.
 *
 * It does what an engine does: random numbers, times read and written in a table, a branch that cannot be foreseen. A loop of arithmetic alone slows down
 * by a fifth where a neighbour takes the caches, and an engine by a half. Many short calls instead of one long one: code that is exchanged in the
 * middle of a long loop has come out up to three times slower, by chance.
 *
 * @returns nanoseconds a turn, median of 15 times half a million turns
 */
export function calibrate(): number {
  const times = new Float64Array(PLACES)
  const froms = new Int32Array(PLACES)
  let x = 123456789
  for (let call = 0; call < WARM; call++) x = moved(x, times, froms)
  const samples = Array.from({ length: SAMPLES }, () => {
    const start = process.hrtime.bigint()
    for (let call = 0; call < CALLS; call++) x = moved(x, times, froms)
    return Number(process.hrtime.bigint() - start) / (CALLS * TURNS)
  })
  if (x === 0) throw new Error('the result is consumed here, so that the loop is not optimised away')
  return samples.sort((a, b) => a - b)[(SAMPLES - 1) / 2]!
}

/** Ten thousand turns: the later of two times goes from place to place. The number given back is never 0. */
function moved(from: number, times: Float64Array, froms: Int32Array): number {
  let x = from
  for (let turn = 0; turn < TURNS; turn++) {
    x ^= x << 13
    x ^= x >>> 17
    x ^= x << 5
    const one = x & (PLACES - 1)
    const other = (x >>> 12) & (PLACES - 1)
    const time = times[one]! + (x >>> 24)
    if (time > times[other]!) {
      times[other] = time
      froms[other] = one
    } else {
      times[one] = times[other]!
      froms[one] = froms[other]! ^ other
    }
  }
  return x
}
