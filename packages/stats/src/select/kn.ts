import { Tally } from '../accumulate/tally.ts'
import { notAboveZero, notACount, notANumber, notAShare } from '../messages.ts'
import { StatisticsError } from '../statisticsError.ts'

/** What a selection is asked. */
export interface KnOptions {
  /** systems to choose from, 2 … 200; larger is better */
  readonly systems: number
  /** smallest difference worth caring about, in the unit of the outputs; set before any run */
  readonly delta: number
  /** replications of the first stage, 2 or more */
  readonly firstStage: number
  /** chance of not choosing the best where it is better than every other by delta or more */
  readonly alpha: number
}

/** Replications that are needed next: these indices, these systems, the same worlds for all. */
export interface KnRequest {
  /** indices from … below, from 0 */
  readonly from: number
  readonly below: number
  /** indices of the systems still in, ascending */
  readonly systems: readonly number[]
}

/** A system that was dropped, and when, in replications. */
export interface KnElimination {
  readonly system: number
  /** replications of each system when it was dropped */
  readonly stage: number
}

/** The system chosen, and how long it took. */
export interface KnChoice {
  /** index of the system chosen */
  readonly selected: number
  readonly stage: number
  readonly eliminated: readonly KnElimination[]
  /** worst case: no system can need more than one replication above it */
  readonly replicationsMax: number
  /** replications made, over all systems */
  readonly observations: number
  /** decided at first stage: the spread of all differences was so small that no second was needed */
  readonly status: 'ok' | 'decided at first stage'
}

/**
 * Constants of the procedure.
 *
 * @see Kim & Nelson, A fully sequential procedure for indifference-zone selection in simulation (2001)
 * @example knConstants({ systems: 2, delta: 1, firstStage: 10, alpha: 0.05 }).h2 // => 6.012904834800527
 */
export function knConstants({ systems, firstStage, alpha }: KnOptions): { readonly eta: number; readonly h2: number } {
  const eta = 0.5 * (((2 * alpha) / (systems - 1)) ** (-2 / (firstStage - 1)) - 1)
  return { eta, h2: 2 * eta * (firstStage - 1) }
}

/**
 * Choice of the best of many systems that run in the same worlds, dropping those that are clearly worse on the way.
 *
 * A generator: it yields what it needs next and takes the outputs, by system of the request, then by replication; so it can be driven by a plain function or by workers.
 * If the best is better than every other by delta or more, it is chosen with chance 1 − alpha or more; others within delta may be as good.
 *
 * @throws StatisticsError E_DOMAIN, E_TOO_LARGE, E_NOT_A_NUMBER
 * @see Kim & Nelson, A fully sequential procedure for indifference-zone selection in simulation (2001)
 * @example knSteps({ systems: 3, delta: 2, firstStage: 20, alpha: 0.05 }).next().value // => { from: 0, below: 20, systems: [0, 1, 2] }
 */
export function* knSteps(options: KnOptions): Generator<KnRequest, KnChoice, readonly (readonly number[])[]> {
  checkOptions(options)
  const { systems: k, delta, firstStage } = options
  const { h2 } = knConstants(options)
  let inside = [...Array(k).keys()]
  const sums = new Float64Array(k)
  const first = yield { from: 0, below: firstStage, systems: inside }
  addOutputs(sums, inside, first, firstStage)
  const limits = first.map((a) => first.map((b) => (h2 * Tally.of(a.map((value, j) => value - b[j]!)).variance!) / (delta * delta)))
  const replicationsMax = Math.floor(Math.max(...limits.map((row) => Math.max(...row))))
  const eliminated: KnElimination[] = []
  let observations = k * firstStage
  const choice = (stage: number, status: KnChoice['status']): KnChoice => ({
    selected: bestOf(inside, sums),
    stage,
    eliminated,
    replicationsMax,
    observations,
    status,
  })
  if (firstStage > replicationsMax) return choice(firstStage, 'decided at first stage')
  for (let r = firstStage; ; r++) {
    const before = inside
    inside = before.filter((i) =>
      before.every((l) => l === i || sums[i]! / r >= sums[l]! / r - Math.max(0, (delta / (2 * r)) * (limits[i]![l]! - r))),
    )
    for (const system of before) if (!inside.includes(system)) eliminated.push({ system, stage: r })
    if (inside.length === 1 || r === replicationsMax + 1) return choice(r, 'ok')
    const next = yield { from: r, below: r + 1, systems: inside }
    addOutputs(sums, inside, next, 1)
    observations += inside.length
  }
}

/** ties to the lower index */
function bestOf(inside: readonly number[], sums: Float64Array): number {
  return inside.reduce((best, system) => (sums[system]! > sums[best]! ? system : best))
}

function addOutputs(sums: Float64Array, systems: readonly number[], outputs: readonly (readonly number[])[], count: number): void {
  if (outputs.length !== systems.length) {
    throw new StatisticsError(
      'E_UNEQUAL_LENGTH',
      `${outputs.length} systems came back of ${systems.length} asked for: give the outputs of each.`,
    )
  }
  outputs.forEach((values, at) => {
    const row = values.findIndex((value) => !Number.isFinite(value))
    if (values.length !== count || row >= 0) throw notANumber(`The output of system ${systems[at]! + 1}`, values[Math.max(0, row)], row + 1)
    for (const value of values) sums[systems[at]!]! += value
  })
}

function checkOptions({ systems, delta, firstStage, alpha }: KnOptions): void {
  if (!(Number.isInteger(systems) && systems >= 2)) throw notACount('The number of systems', systems, 2)
  if (systems > 200) throw new StatisticsError('E_TOO_LARGE', `${systems} systems are too many: choose among at most 200.`)
  if (!(delta > 0 && delta < Infinity)) throw notAboveZero('δ', delta)
  if (!(Number.isInteger(firstStage) && firstStage >= 2)) throw notACount('The number of replications of the first stage', firstStage, 2)
  if (!(alpha > 0 && alpha < 1)) throw notAShare('The chance of error', alpha)
}
