const TURNS = 10_000_000

/**
 * A small loop of shifts and additions: its time tells how fast this machine is just now, so that ratios to it hold on another machine or a busy one.
 *
 * @returns nanoseconds a turn, median of five times ten million turns
 */
export function calibrate(): number {
  const times = Array.from({ length: 5 }, () => {
    let x = 123456789
    let sum = 0
    const start = process.hrtime.bigint()
    for (let i = 0; i < TURNS; i++) {
      x ^= x << 13
      x ^= x >>> 17
      x ^= x << 5
      sum = (sum + x) | 0
    }
    const nanoseconds = Number(process.hrtime.bigint() - start) / TURNS
    if (sum === 1) throw new Error('the sum is consumed here, so that the loop is not optimised away')
    return nanoseconds
  })
  return times.sort((a, b) => a - b)[2]!
}
