/** A plan for the acceptance: how many trials, from what count on it is passed, and how often that is wrong. */

/** What is asked of a plan. */
export interface PlanRequest {
  /** chance that a line which meets its forecast fails, at most */
  readonly falseAlarm: number
  /** chance that a slower line passes, at most */
  readonly miss: number
  /** trials, at most */
  readonly trialsMost: number
}

/** A plan, and how often it is wrong, by the simulated trials. */
export interface TestPlan {
  readonly trials: number
  /** passed from so many units on, all trials together */
  readonly passFrom: number
  /** chance that a line which meets its forecast fails */
  readonly falseAlarm: number
  /** chance that the slower line passes */
  readonly miss: number
  /** both are as small as asked; false: no plan of so few trials is, and this one has the smallest miss */
  readonly meets: boolean
}

/**
 * The plan with the fewest trials whose two errors are as small as asked; the threshold is the highest that keeps the false alarms.
 *
 * Sums of several trials are exact convolutions of the simulated ones, taken as independent of each other.
 *
 * @param healthy  units of simulated trials of a line that meets its forecast, whole numbers
 * @param slower   of the same line, slower
 * @example testPlan([100, 101, 102, 103], [80, 81, 82, 83], { falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }) // => { trials: 1, passFrom: 100, falseAlarm: 0, miss: 0, meets: true }
 */
export function testPlan(healthy: readonly number[], slower: readonly number[], { falseAlarm, miss, trialsMost }: PlanRequest): TestPlan {
  const [one, other] = [chances(healthy), chances(slower)]
  let [sums, slowSums] = [one, other]
  let best: TestPlan | null = null
  for (let trials = 1; trials <= trialsMost; trials++) {
    if (trials > 1) [sums, slowSums] = [added(sums, one), added(slowSums, other)]
    const passFrom = threshold(sums, falseAlarm)
    const plan = { trials, passFrom, falseAlarm: below(sums, passFrom), miss: 1 - below(slowSums, passFrom) }
    const rounded = { ...plan, miss: Math.max(0, plan.miss < 1e-12 ? 0 : plan.miss) }
    if (rounded.miss <= miss) return { ...rounded, meets: true }
    if (best === null || rounded.miss < best.miss) best = { ...rounded, meets: false }
  }
  return best!
}

/** Chance of each count, by count. */
type Chances = ReadonlyMap<number, number>

function chances(units: readonly number[]): Chances {
  const found = new Map<number, number>()
  for (const made of units) found.set(made, (found.get(made) ?? 0) + 1 / units.length)
  return found
}

function added(first: Chances, second: Chances): Chances {
  const found = new Map<number, number>()
  for (const [a, p] of first) for (const [b, q] of second) found.set(a + b, (found.get(a + b) ?? 0) + p * q)
  return found
}

const below = (sums: Chances, count: number): number => [...sums].reduce((sum, [made, chance]) => sum + (made < count ? chance : 0), 0)

/** The highest count that at most so many fall short of. */
function threshold(sums: Chances, falseAlarm: number): number {
  let short = 0
  const counts = [...sums.keys()].sort((a, b) => a - b)
  for (const count of counts) {
    if (short + sums.get(count)! > falseAlarm + 1e-12) return count
    short += sums.get(count)!
  }
  return counts.at(-1)!
}
