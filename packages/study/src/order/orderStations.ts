/** Which order and places of stations make most: candidates, a selection whose error is known, and the winner against today in fresh worlds. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { lawOrNull, lawTerms, workingSeconds } from '@loopwright/line/bounds'
import { meanOf, type OutputInterval, outputInterval } from '@loopwright/stats'
import { pairedDifference, type PairedDifference } from '@loopwright/stats/worlds'
import { bestTable, type BestTable, type KnChoice, knSteps } from '@loopwright/stats/procedures'
import { checkReplications } from '../runs/asked.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { refuseLong, workOf } from '../runs/openPool.ts'
import { type PlaceRequest, placeRules } from './placeRules.ts'
import { inCommon, type Runner, unitsOf, withRunner } from '../runs/runner.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'
import { type Places, placesOf, withPlaces } from './places.ts'
import { allPlaces, neighbours, whyNotPlaces } from './stationPlaces.ts'

/** What a study of station orders is asked. */
export interface OrderRequest extends PlaceRequest {
  /** chance of not choosing the best where it is better than every other by delta; default 0.05 */
  readonly alpha?: number
  /** smallest difference worth caring about, units per window; default 0.5 % of today's mean in the pilot */
  readonly delta?: number
  /** first stage of the selection; default 20 */
  readonly firstStage?: number
  /** replications of the check in fresh worlds; default 60 */
  readonly check?: number
  /** up to so many placements all are candidates, 1 … 200; default 200 */
  readonly exhaustiveMax?: number
}

/** The orders tried, the best, and what it gains over today's; units per window. */
export interface OrderResult {
  readonly kind: 'station order'
  readonly engineVersion: string
  readonly seed: string
  readonly partial: boolean
  readonly alpha: number
  readonly delta: number
  readonly firstStage: number
  /** today's first, then the one given by hand, then the others */
  readonly candidates: readonly OrderCandidate[]
  /** all that the rules allow were candidates; else the best that a search with short runs found */
  readonly exhaustive: boolean
  /** placements looked at by short runs; 0 where all are candidates */
  readonly searched: number
  /** places in `candidates`; null: stopped before */
  readonly today: number
  readonly mine: number | null
  readonly winner: number | null
  readonly choice: KnChoice | null
  /** against the best of the others, of the first stage, which all have */
  readonly table: BestTable | null
  /** winner less today, in fresh worlds, so that having been chosen does not flatter it; null where today wins */
  readonly gain: PairedDifference | null
  /** given by hand less today, in the same fresh worlds */
  readonly mineGain: PairedDifference | null
  readonly todayMean: OutputInterval | null
}

/** One order, and what it made; units per window. */
export interface OrderCandidate {
  /** zone of every station, by its index */
  readonly places: Places
  /** units per window, by replication, as many as the selection wanted */
  readonly units: readonly number[]
  /** when the selection dropped it, in replications; null: it stayed */
  readonly droppedAt: number | null
}

/** placements that are looked at, at most */
const CANDIDATES_MAX = 200
/** those that a search leaves over */
const KEPT = 20
const PILOT = 10
const FIRST_STAGE = 20
const CHECK = 60
const ROUNDS_MAX = 8
/** replications that are run ahead, so that threads have something to do; no answer depends on it */
const AHEAD = 8

/**
 * Chooses among placements of the stations that may move.
 *
 * @throws RangeError  if a station or zone is not known, nothing may move, or a placement given by hand cannot stand
 * @see Kim & Nelson, A fully sequential procedure for indifference-zone selection in simulation (2001)
 * @see Hsu, Multiple Comparisons (1996), for the table against the best
 * @example (await orderStations(line, { move: ['B'], zones: ['Z3', 'Z4'], check: 5 }, { seed: '1', workers: 0 })).candidates.map(({ places }) => places) // => [[0, 2, 4], [0, 3, 4]]
 */
export async function orderStations(given: GivenLine, request: OrderRequest, options: StudyOptions): Promise<OrderResult> {
  const line = completeLine(given)
  const rules = placeRules(line, request)
  const { firstStage = FIRST_STAGE, check = CHECK } = request
  checkReplications(firstStage, 'the first stage of an order needs', 2)
  checkReplications(check, 'the check of an order needs')
  return await withRunner(options, null, (runner) => chooseOrder(line, rules, { ...request, firstStage, check }, options, runner))
}

type Rules = ReturnType<typeof placeRules>
type Numbers = Omit<OrderRequest, keyof PlaceRequest> & { readonly firstStage: number; readonly check: number }

async function chooseOrder(line: LineSpec, rules: Rules, numbers: Numbers, options: StudyOptions, runner: Runner): Promise<OrderResult> {
  const { alpha = 0.05, firstStage, check, exhaustiveMax = CANDIDATES_MAX } = numbers
  const { mine } = rules
  const { seed } = options
  const today = placesOf(line)
  if (mine !== undefined) {
    const why = whyNotPlaces(line, { move: rules.move }, mine)
    if (why !== null) throw new RangeError(`the order given cannot be tried: ${why}`)
  }
  const all = allPlaces(line, rules, exhaustiveMax)
  const least = PILOT + (all?.length ?? KEPT) * firstStage + check
  refuseLong(options, workOf(line, [{ carriers: line.carriers.count, replications: least }]))
  runner.expect(PILOT, 'what today’s order makes', true)
  const pilot = await pilotMeans(line, [today], seed, runner)
  const delta = numbers.delta ?? 0.005 * pilot[0]!
  if (!(delta > 0) && !runner.stopped)
    throw new RangeError('today’s order makes nothing in the pilot: look at why it stands still (loopwright run)')
  const found = all === null ? await search(line, rules, seed, today, pilot[0]!, runner) : { kept: all, searched: 0 }
  const places = unique([today, ...(mine === undefined ? [] : [mine]), ...found.kept])
  const lines = places.map((each) => withPlaces(line, each))
  const head = {
    kind: 'station order',
    engineVersion: ENGINE_VERSION,
    seed,
    alpha,
    delta,
    firstStage,
    exhaustive: all !== null,
    searched: found.searched,
    today: 0,
    mine: mine === undefined ? null : places.findIndex((each) => each.join() === mine.join()),
  } as const
  const none = { winner: null, choice: null, table: null, gain: null, mineGain: null, todayMean: null }
  if (runner.stopped) return { ...head, ...none, partial: true, candidates: [] }
  if (places.length < 2) {
    throw new RangeError('the rules leave no other order than today’s: let more stations move, or name more zones')
  }
  const selected = await select(lines, { alpha, delta, firstStage }, runner)
  const droppedAt = (index: number): number | null => selected.choice?.eliminated.find(({ system }) => system === index)?.stage ?? null
  const candidates = places.map((each, index) => ({ places: each, units: selected.units[index]!, droppedAt: droppedAt(index) }))
  if (selected.choice === null) return { ...head, ...none, partial: true, candidates }
  const winner = selected.choice.selected
  const fresh = unique([today, places[winner]!, ...(mine === undefined ? [] : [mine])])
  runner.expect(fresh.length * check, 'the chosen order against today’s, in fresh worlds')
  const worlds = { seed: `${seed}-check`, from: 0, to: check }
  const checked = inCommon(
    await runner.run(
      fresh.map((each) => withPlaces(line, each)),
      worlds,
    ),
  ).map(unitsOf)
  const partial = checked[0]!.length < check
  const against = (other: Places): PairedDifference | null => {
    const index = fresh.findIndex((each) => each.join() === other.join())
    return index <= 0 || checked[0]!.length < 2 ? null : pairedDifference(checked[index]!, checked[0]!)
  }
  return {
    ...head,
    partial,
    candidates,
    winner,
    choice: selected.choice,
    table: bestTable(
      selected.units.map((units) => units.slice(0, firstStage)),
      alpha,
    ),
    gain: against(places[winner]!),
    mineGain: mine === undefined ? null : against(mine),
    todayMean: checked[0]!.length < 2 ? null : outputInterval(checked[0]!),
  }
}

interface Selected {
  readonly choice: KnChoice | null
  readonly units: readonly (readonly number[])[]
}

/** Drives the selection by threads: replications are run ahead of what it asks for, and given to it when it does. */
async function select(
  lines: readonly LineSpec[],
  options: { readonly alpha: number; readonly delta: number; readonly firstStage: number },
  runner: Runner,
): Promise<Selected> {
  const { alpha, delta, firstStage } = options
  const made: number[][] = lines.map(() => [])
  const used = lines.map(() => 0)
  const given = (choice: KnChoice | null): Selected => ({ choice, units: made.map((units, index) => units.slice(0, used[index])) })
  const steps = knSteps({ systems: lines.length, delta, firstStage, alpha })
  let step = steps.next()
  while (!step.done) {
    const { from, below, systems } = step.value
    if (systems.some((system) => made[system]!.length < below)) {
      const to = from === 0 ? below : below - 1 + AHEAD
      const still = systems.length === 1 ? '1 order' : `${systems.length} orders`
      runner.expect(systems.length * (to - made[systems[0]!]!.length), `which order is best, ${still} left of ${lines.length}`, true)
      const ran = await runner.run(
        systems.map((system) => lines[system]!),
        { from: made[systems[0]!]!.length, to },
      )
      for (const [place, rows] of ran.entries()) made[systems[place]!]!.push(...unitsOf(rows))
      if (runner.stopped) return given(null)
    }
    for (const system of systems) used[system] = below
    step = steps.next(systems.map((system) => made[system]!.slice(from, below)))
  }
  return given(step.value)
}

/**
 * Where there are too many placements to try all: from today's, by steps to better neighbours as short runs in other worlds show them. A placement whose law lies
 * below what today makes is not run.
 */
async function search(
  line: LineSpec,
  rules: Rules,
  seed: string,
  today: Places,
  todayMean: number,
  runner: Runner,
): Promise<{ readonly kept: Places[]; readonly searched: number }> {
  const seconds = workingSeconds(line)
  const means = new Map<string, { places: Places; mean: number }>([[today.join(), { places: today, mean: todayMean }]])
  const hopeless = (places: Places): boolean => {
    const bound = lawOrNull(withPlaces(line, places))
    if (bound === null) return false
    return lawTerms(bound, line.carriers.count).rate * bound.unitsPerLap * seconds < 0.98 * todayMean
  }
  let at = today
  for (let round = 0; round < ROUNDS_MAX && means.size < CANDIDATES_MAX && !runner.stopped; round += 1) {
    const fresh = neighbours(line, rules, at).filter((places) => !means.has(places.join()) && !hopeless(places))
    const some = fresh.slice(0, CANDIDATES_MAX - means.size)
    if (some.length === 0) break
    runner.expect(some.length * PILOT, `which orders are worth a closer look, ${means.size} tried`, true)
    const found = await pilotMeans(line, some, seed, runner)
    for (const [index, places] of some.entries()) means.set(places.join(), { places, mean: found[index]! })
    const [best] = [...means.values()].sort((a, b) => b.mean - a.mean)
    if (best!.places === at) break
    at = best!.places
  }
  const ranked = [...means.values()].sort((a, b) => b.mean - a.mean)
  return { kept: ranked.slice(0, KEPT).map(({ places }) => places), searched: means.size }
}

/** Means over a few replications in worlds of their own; 0 where a stop came first. */
async function pilotMeans(line: LineSpec, places: readonly Places[], seed: string, runner: Runner): Promise<number[]> {
  const ran = await runner.run(
    places.map((each) => withPlaces(line, each)),
    { seed: `${seed}-pilot`, from: 0, to: PILOT },
  )
  return ran.map((rows) => {
    const units = unitsOf(rows)
    return units.length === 0 ? 0 : meanOf(units)
  })
}

function unique(places: readonly Places[]): Places[] {
  return [...new Map(places.map((each) => [each.join(), each])).values()]
}
