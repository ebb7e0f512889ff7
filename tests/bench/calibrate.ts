/** A small loop of shifts and additions: its time tells how fast this machine is just now, so that ratios to it hold on another machine or a busy one. */
export function calibrate(): number {
  let best = Number.POSITIVE_INFINITY
  for (let k = 0; k < 5; k++) {
    let x = 123456789
    let sum = 0
    const start = process.hrtime.bigint()
    for (let i = 0; i < 10_000_000; i++) {
      x ^= x << 13
      x ^= x >>> 17
      x ^= x << 5
      sum = (sum + x) | 0
    }
    const nanoseconds = Number(process.hrtime.bigint() - start) / 10_000_000
    if (sum === 1) throw new Error('the sum is consumed here, so that the loop is not optimised away')
    best = Math.min(best, nanoseconds)
  }
  return best
}
