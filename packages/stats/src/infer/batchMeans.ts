import { Tally } from '../accumulate/tally.ts'
import { needLevel, needSample } from '../samples.ts'
import { normalCdf } from '../special/normal.ts'
import { tQuantile } from '../special/tQuantile.ts'

/** One way to cut the run into batches. */
export interface BatchCandidate {
  readonly batches: number
  readonly batchLength: number
  /** observations left out at the front, so that the batches are whole */
  readonly droppedFront: number
  readonly mean: number
  readonly halfWidth: number
  /** von Neumann's ratio as a measure of dependence, near 0 for independent batches; null where all batches are equal */
  readonly dependence: number | null
  /** chance of a dependence as large where there is none; null where all batches are equal */
  readonly pValue: number | null
}

/** The mean of one long run with its interval, by numbers of batches. */
export interface BatchMeans {
  readonly level: number
  readonly candidates: readonly BatchCandidate[]
  /** the first candidate that passes; null: the batches still depend on each other, run longer */
  readonly chosen: BatchCandidate | null
  readonly status: 'ok' | 'no spread' | 'batches depend on each other'
}

const COUNTS = [30, 25, 20, 15, 10]
const PASSES_FROM = 0.1

/**
 * Interval of the mean of one long run after its warm-up, by means of batches long enough to be independent. Offered; replications are the default. Gives no quantiles of shifts.
 *
 * @param values  in order, warm-up taken away; 100 or more
 * @param level   above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_DOMAIN
 * @see von Neumann, Distribution of the ratio of the mean square successive difference to the variance (1941)
 * @see Fishman, Grouping observations in digital simulation (1978); Schmeiser, Batch size effects in the analysis of simulation output (1982), from memory
 * @example batchMeans(Array.from({ length: 400 }, (_, k) => (k * 7) % 11)).status // => 'ok'
 */
export function batchMeans(values: readonly number[], level: number = 0.95): BatchMeans {
  needLevel(level)
  needSample('batch means', values, 'observation', 100)
  const candidates = COUNTS.filter((batches) => values.length >= batches).map((batches) => candidate(values, batches, level))
  const flat = candidates.find((one) => one.pValue === null)
  if (flat !== undefined) return { level, candidates, chosen: flat, status: 'no spread' }
  const chosen = candidates.find((one) => one.pValue! >= PASSES_FROM) ?? null
  return { level, candidates, chosen, status: chosen === null ? 'batches depend on each other' : 'ok' }
}

function candidate(values: readonly number[], batches: number, level: number): BatchCandidate {
  const batchLength = Math.floor(values.length / batches)
  const droppedFront = values.length - batches * batchLength
  const means = Array.from({ length: batches }, (_, b) => {
    const from = droppedFront + b * batchLength
    return Tally.of(values.slice(from, from + batchLength)).mean!
  })
  const tally = Tally.of(means)
  const mean = tally.mean!
  const shape = { batches, batchLength, droppedFront, mean }
  if (tally.variance === 0) return { ...shape, halfWidth: 0, dependence: null, pValue: null }
  let steps = 0
  for (let i = 1; i < batches; i++) steps += (means[i]! - means[i - 1]!) ** 2
  const dependence = 1 - steps / (2 * (batches - 1) * tally.variance!)
  const pValue = normalCdf(-dependence / Math.sqrt((batches - 2) / (batches * batches - 1)))
  return { ...shape, halfWidth: (tQuantile((1 + level) / 2, batches - 1) * tally.sd!) / Math.sqrt(batches), dependence, pValue }
}
