import { Tally } from '../accumulate/tally.ts'
import { pairedLowerLimit } from '../infer/pairedDifference.ts'
import { notACount, notAShare, tooFew, unequalLength } from '../messages.ts'
import { needSample } from '../samples.ts'
import { smallestEnough } from '../smallestEnough.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { StatisticsError } from '../statisticsError.ts'

/** Outputs by count and replication, the same worlds for every count. */
export interface CountTable {
  /** seed text of the runs */
  readonly seed: string
  /** carriers, ascending */
  readonly counts: readonly number[]
  /** by count, then by replication */
  readonly outputs: readonly (readonly number[])[]
  /** runs that ended in gridlock, by count; they count with the output they made, and their count is never confirmed */
  readonly gridlocks?: readonly number[]
}

export interface PilotReference {
  /** the count with the highest mean in the pilot, ties to the smallest */
  readonly reference: number
  /** output may still rise: add counts */
  readonly atUpperEnd: boolean
}

/** One number of carriers against all others. */
export interface TestedCount {
  readonly carriers: number
  /** least of the lower limits of mean(Y_N − (1 − x)·Y_m) over all other counts m */
  readonly lowerLimit: number
  /** the count m that gives it */
  readonly against: number
  readonly confirmed: boolean
}

/** reference not confirmed: no answer, more replications are needed; smallest confirmed: add smaller counts */
export type ProcedureWStatus = 'ok' | 'reference not confirmed' | 'smallest count confirmed'

/** The answer of Procedure W, and the tests behind it. */
export interface CarrierAnswer {
  readonly reference: number
  readonly within: number
  readonly alpha: number
  readonly replications: number
  /** from the reference downward, to the first that is not confirmed */
  readonly tested: readonly TestedCount[]
  /** smallest count confirmed; null: none */
  readonly answer: number | null
  readonly status: ProcedureWStatus
}

/**
 * The count to test against, from pilot runs.
 *
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH
 */
export function pilotReference(pilot: CountTable): PilotReference {
  checkTable(pilot, 2)
  const means = pilot.outputs.map((values) => Tally.of(values).mean!)
  const best = means.indexOf(Math.max(...means))
  return { reference: pilot.counts[best]!, atUpperEnd: best === means.length - 1 }
}

/**
 * Replications of the final runs, fixed before them: the smallest number from 10 on that lets the test see a quarter of the border, by the spread of the pilot.
 *
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH, E_DOMAIN; E_PRECISION where more than 100,000 would be needed
 * @example finalReplications({ seed: 'pilot', counts: [5, 6], outputs: [[310, 330, 318, 325], [322, 318, 335, 321]] }) // => 753
 */
export function finalReplications(pilot: CountTable, within: number = 0.01, alpha: number = 0.05): number {
  checkShares(within, alpha)
  const { reference } = pilotReference(pilot)
  const ofReference = pilot.outputs[pilot.counts.indexOf(reference)]!
  const mean = Tally.of(ofReference).mean!
  let sd = 0
  for (const values of pilot.outputs) {
    if (Tally.of(values).mean! < (1 - 2 * within) * mean) continue
    sd = Math.max(sd, Tally.of(values.map((value, j) => value - (1 - within) * ofReference[j]!)).sd!)
  }
  const border = (within * mean) / 4
  const found = smallestEnough((n) => (tQuantile(1 - alpha, n - 1) * sd) / Math.sqrt(n) <= border, 10, 100_000)
  if (found !== null) return found
  throw new StatisticsError(
    'E_PRECISION',
    `More than 100,000 replications would be needed to see ${100 * within} % of the output: choose a wider share.`,
  )
}

/**
 * The smallest count whose output is within a share of the best one's, with a chance of at most alpha that it is not.
 *
 * From the reference downward each count must pass a one-sided paired test against every other; the first that fails ends it. All must pass, so no correction for their number.
 *
 * @param final      fresh runs: another seed text than the pilot's
 * @param reference  from the pilot
 * @param pilotSeed  seed text of the pilot
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH, E_DOMAIN; E_PAIRING where pilot and final runs are the same
 * @see Berger, Multiparameter hypothesis testing and acceptance sampling (1982); Maurer, Hothorn & Lehmacher (1995), testing in a fixed order. The combination is our own
 * @example procedureW({ seed: 'final', counts: [5, 6], outputs: [[318, 322, 320, 319], [320, 323, 321, 321]] }, 6, 'pilot').answer // => 5
 */
export function procedureW(
  final: CountTable,
  reference: number,
  pilotSeed: string,
  within: number = 0.01,
  alpha: number = 0.05,
): CarrierAnswer {
  checkShares(within, alpha)
  checkTable(final, 2)
  if (final.seed === pilotSeed) {
    throw new StatisticsError(
      'E_PAIRING',
      `The reference and its test come from the same seed ${pilotSeed}: take the reference from pilot runs with a seed of their own.`,
    )
  }
  const start = final.counts.indexOf(reference)
  if (start < 0) throw new StatisticsError('E_DOMAIN', `The reference of ${reference} carriers is not among the counts run: add it.`)
  const tested: TestedCount[] = []
  let answer: number | null = null
  for (let at = start; at >= 0; at--) {
    const one = testCount(final, at, within, alpha)
    tested.push(one)
    if (!one.confirmed) break
    answer = one.carriers
  }
  const status = answer === null ? 'reference not confirmed' : tested.at(-1)!.confirmed ? 'smallest count confirmed' : 'ok'
  return { reference, within, alpha, replications: final.outputs[0]!.length, tested, answer, status }
}

function testCount({ counts, outputs, gridlocks }: CountTable, at: number, within: number, alpha: number): TestedCount {
  let lowerLimit = Infinity
  let against = counts[at]!
  for (let m = 0; m < counts.length; m++) {
    if (m === at) continue
    const { low } = pairedLowerLimit(
      outputs[at]!.map((value, j) => value - (1 - within) * outputs[m]![j]!),
      1 - alpha,
    )
    if (low < lowerLimit) {
      lowerLimit = low
      against = counts[m]!
    }
  }
  return { carriers: counts[at]!, lowerLimit, against, confirmed: lowerLimit >= 0 && (gridlocks?.[at] ?? 0) === 0 }
}

function checkTable({ counts, outputs }: CountTable, replicationsMin: number): void {
  if (counts.length < 2) throw tooFew('the number of carriers', counts.length, 'count', 2)
  if (counts.length !== outputs.length) throw unequalLength('The list of counts', counts.length, 'the table of outputs', outputs.length)
  for (let i = 0; i < counts.length; i++) {
    if (!(Number.isInteger(counts[i]) && counts[i]! > (counts[i - 1] ?? 0)))
      throw notACount(`Carriers in row ${i + 1}`, counts[i]!, (counts[i - 1] ?? 0) + 1)
    if (outputs[i]!.length !== outputs[0]!.length)
      throw unequalLength(`${counts[0]} carriers`, outputs[0]!.length, `${counts[i]} carriers`, outputs[i]!.length)
    needSample(`${counts[i]} carriers`, outputs[i]!, 'replication', replicationsMin)
  }
}

function checkShares(within: number, alpha: number): void {
  if (!(within > 0 && within < 1)) throw notAShare('The share within', within)
  if (!(alpha > 0 && alpha < 1)) throw notAShare('The chance of error', alpha)
}
