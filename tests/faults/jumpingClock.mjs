// The clock of this process jumps with each SIGUSR2: a day on, an hour back, a minute on, and so forth.
const JUMPS = [86_400_000, -90_000_000, 60_000, -3_600_000]
const real = Date.now.bind(Date)
let off = 0
let jumps = 0
Date.now = () => real() + off
process.on('SIGUSR2', () => {
  off += JUMPS[jumps % JUMPS.length]
  jumps += 1
})
