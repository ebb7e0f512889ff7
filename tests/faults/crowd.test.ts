import { law } from '@loopwright/line/bounds'
import { replicate } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { type Crowd, crowdLine, jobsPerSecond, workersEnough } from './crowd.ts'

/** Jobs a second that the loop makes: its seconds are milliseconds. */
async function simulated(crowd: Crowd, spread: number, jobs: number): Promise<number> {
  const [run] = await replicate(crowdLine(crowd, spread, jobs), { replications: 1 }, { seed: '1', workers: 0 })
  return run!.outputPerHour / 3.6
}

/**
 * Throughput of a closed loop of a delay and one server with exponential times, exact by mean value analysis.
 * Source: Reiser & Lavenberg, Mean-value analysis of closed multichain queuing networks, Journal of the ACM 27 (1980).
 */
function byMeanValues({ workers, jobMs, serverMs }: Crowd): number {
  let waiting = 0
  let rate = 0
  for (let count = 1; count <= workers; count += 1) {
    const stay = serverMs * (1 + waiting)
    rate = count / (jobMs + stay)
    waiting = rate * stay
  }
  return 1000 * rate
}

describe('workers at one server, as a loop', () => {
  test.each([1, 2, 10, 20, 40, 100])('%i of them, constant times: the limits, as the law of the loop has them', async (workers) => {
    const crowd = { workers, jobMs: 60, serverMs: 2 }
    const expected = jobsPerSecond(crowd)
    const { exchangeSeconds, lapSeconds } = law(crowdLine(crowd, 0, 100))
    expect(1000 * Math.min(workers / lapSeconds, 1 / exchangeSeconds)).toBeCloseTo(expected, 1)
    const made = await simulated(crowd, 0, 400)
    expect(Math.abs(made / expected - 1)).toBeLessThan(0.01)
  })

  // one run of 4,000 jobs: a mean of exponential times is known to 1 / √4000 = 1.6 %; the server's own moves are constant, which makes it quicker by up to 2 %
  test.each([4, 20, 31, 60])('%i of them, times as chance has them: mean value analysis', async (workers) => {
    const crowd = { workers, jobMs: 60, serverMs: 2 }
    const made = await simulated(crowd, 1, 4000)
    expect(Math.abs(made / byMeanValues(crowd) - 1)).toBeLessThan(0.06)
    expect(Math.abs(made / byMeanValues({ ...crowd, serverMs: 2.5 }) - 1) > 0.06 || workers < 31).toBe(true)
  })

  test('from so many on the server limits', () => {
    const crowd = { jobMs: 60, serverMs: 2 }
    expect(workersEnough(crowd)).toBe(31)
    expect(jobsPerSecond({ ...crowd, workers: 31 })).toBe(500)
    expect(jobsPerSecond({ ...crowd, workers: 310 })).toBe(500)
  })
})
