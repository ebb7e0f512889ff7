import { toGrid } from '@loopwright/kernel'
import { buildLine } from './build/build.ts'
import { completeLine, type GivenLine } from './builder/givenLine.ts'
import { restartSupplies } from './goods/arrivals.ts'
import { makeAllClear } from './moves/clear.ts'
import { standsStill, standstill } from './instant/gridlock.ts'
import { handleInstant } from './instant/instant.ts'
import { inOne, type Pieces } from './instant/pieces.ts'
import { checkInvariants } from './instant/invariants.ts'
import { restartHandling } from './operators/operators.ts'
import { quickPieces } from './quick/quick.ts'
import { makeQuick, type Quick, resetQuick } from './quick/quickZones.ts'
import { whyNoRecursion } from './recursion/canRecur.ts'
import { recur } from './recursion/run.ts'
import { makeRecursion, resetRecursion, type Recursion } from './recursion/recursion.ts'
import type { LineSpec } from './spec.ts'
import type { RunEnd, RunResult } from './telling/result.ts'
import { resetLine } from './build/start.ts'
import type { Line } from './state/line.ts'
import { resultOf } from './telling/resultOf.ts'
import { type RunTotals, totalsOf } from './telling/totals.ts'
import { STANDSTILL, type Trace } from './telling/trace.ts'

/** One of the random worlds. */
export interface World {
  /** text that starts the random streams; not empty, no `/` */
  readonly seed: string
  /** whole number from 0; default: 0, the first that a study runs */
  readonly replication?: number
}

/** How a line is run; of this nothing changes a result. */
export interface SimulatorOptions {
  /** collects every event; default: none */
  readonly trace?: Trace
  /** checks the invariants after every instant; default: false */
  readonly verify?: boolean
  /** `events`: one event after the other; `recursion`: without a queue, for lines that it holds for; default `auto`: the recursion where it holds and no trace is wanted */
  readonly engine?: 'auto' | 'events' | 'recursion'
  /** stores simultaneous timers in the opposite order, which must change nothing; default: false */
  readonly backwards?: boolean
}

/** A line built once and run as often as wanted. */
export interface Simulator {
  /** One run from time 0 to the end of the window, the same as `simulate` gives. @throws RangeError  if the clock stops: things go on happening and none takes time */
  run(world: World): RunResult
  /** The same in pieces of some milliseconds, between which the caller may see to something else, or leave it at that. One at a time. */
  pieces(world: World): Pieces<RunResult>
  /** Counts of the whole of the last run, from time 0 on; zeros before the first. */
  totals(): RunTotals
}

/**
 * One run of the line, from time 0 to the end of the window. (MODEL.md §10)
 *
 * @throws RangeError  if the line cannot be run (see buildLine), or the seed text is empty or contains `/`
 * @example simulate(line, { seed: '1' }).output // => 123
 * @example simulate(line, { seed: '1', replication: 1 }).output // => 120
 */
export function simulate(given: GivenLine, options: World & SimulatorOptions): RunResult {
  return createSimulator(given, options).run(options)
}

/**
 * Builds the line once, for many replications.
 *
 * @example createSimulator(line).run({ seed: '1' }).output // => 123
 * @example ((simulator) => (simulator.run({ seed: '1' }), simulator.totals().loads))(createSimulator(line)) // => 275
 */
export function createSimulator(given: GivenLine, options: SimulatorOptions = {}): Simulator {
  const spec = completeLine(given)
  if (!shapesSettled) settleShapes(spec, options)
  const { line, recursion, quick } = made(spec, options)
  const verify = options.verify ?? false
  function* pieces({ seed, replication = 0 }: World): Pieces<RunResult> {
    resetLine(line, seed, replication)
    if (quick !== null) resetQuick(quick)
    const end = recursion === null ? yield* runToEnd(line, quick, verify) : yield* runRecursion(recursion)
    return resultOf(line, seed, replication, end)
  }
  return { run: (world) => inOne(pieces(world)), pieces, totals: () => totalsOf(line) }
}

interface Made {
  readonly line: Line
  readonly recursion: Recursion | null
  readonly quick: Quick | null
}

function made(spec: LineSpec, options: SimulatorOptions): Made {
  const backwards = options.backwards ?? false
  const line = buildLine(spec, backwards)
  line.trace = options.trace ?? null
  const recursion = wantsRecursion(line, options) ? makeRecursion(line) : null
  const isQuick = recursion === null && options.verify !== true && line.trace === null && !backwards
  return { line, recursion, quick: isQuick ? makeQuick(line) : null }
}

/**
 * What V8 takes the fields of an object to hold is widened when its literal is carried out for the second time, and all code compiled for what they held
 * before is thrown away: so the first line of a process or thread is built three times, before any of that code is compiled.
 */
function settleShapes(spec: LineSpec, options: SimulatorOptions): void {
  shapesSettled = true
  for (let time = 0; time < 2; time++) made(spec, options)
}
let shapesSettled = false

const ENGINES: readonly string[] = ['auto', 'events', 'recursion']

function wantsRecursion(line: Line, options: SimulatorOptions): boolean {
  const engine = options.engine ?? 'auto'
  if (!ENGINES.includes(engine)) throw new RangeError(`there is no engine "${String(engine)}": it is one of ${ENGINES.join(', ')}`)
  if (engine === 'events') return false
  const why = whyNotPlain(options) ?? whyNoRecursion(line)
  if (why === null) return true
  if (engine === 'recursion')
    throw new RangeError(
      `the recursion does not hold for this line: ${why}; take the event engine, which every line, trace and check runs by`,
    )
  return false
}

function whyNotPlain({ trace, verify, backwards }: SimulatorOptions): string | null {
  return trace !== undefined || verify === true || backwards === true ? 'a trace and checks follow one event after the other' : null
}

function* runRecursion(recursion: Recursion): Pieces<RunEnd> {
  const { window } = recursion.line.spec
  resetRecursion(recursion, toGrid(window.warmupSeconds), toGrid(window.endSeconds))
  yield* recur(recursion)
  return endOfWindow()
}

/** What is done once a run stands apart from the loop over its instants: compiled together with it, it would be thrown away at each end. */
function* runToEnd(line: Line, quick: Quick | null, verify: boolean): Pieces<RunEnd> {
  const warmup = toGrid(line.spec.window.warmupSeconds)
  const last = toGrid(line.spec.window.endSeconds)
  handleInstant(line)
  if (verify) checkInvariants(line)
  let goesOn = yield* quick === null ? plainPieces(line, warmup, verify) : quickPieces(line, quick, warmup)
  let end = goesOn ? endOfWindow() : endNow(line)
  endWarmup(line, warmup)
  if (goesOn) {
    goesOn = yield* quick === null ? plainPieces(line, last, verify) : quickPieces(line, quick, last)
    if (!goesOn) end = endNow(line)
  }
  line.now = last
  makeAllClear(line)
  line.collector.finish()
  return end
}

const OVER = 0
const UP_TO = 1
const AGAIN = 2
/** Instants in one piece. */
const SOME = 20_000

/** Handles all instants up to `until`; the one at `line.now` has been handled. False: nothing follows, or nothing can move any more. */
function* plainPieces(line: Line, until: number, verify: boolean): Pieces<boolean> {
  for (;;) {
    const goesOn = runSome(line, until, verify)
    if (goesOn !== AGAIN) return goesOn === UP_TO
    yield
  }
}

function runSome(line: Line, until: number, verify: boolean): number {
  const { queue } = line
  for (let instant = 0; instant < SOME; instant++) {
    if (line.activity === 0 && standsStill(line)) return OVER
    if (queue.size === 0) return OVER
    const next = queue.times[queue.first()]!
    if (next > until) return UP_TO
    line.now = next
    handleInstant(line)
    if (verify) checkInvariants(line)
  }
  return AGAIN
}

function endNow(line: Line): RunEnd {
  if (line.activity > 0 || !standsStill(line)) return endOfWindow()
  if (line.trace !== null) line.trace.add(line.now, STANDSTILL, -1, -1, 0)
  return standstill(line)
}

function endOfWindow(): RunEnd {
  return { reason: 'end of window', atSeconds: null, waits: [], cycle: [], unmanned: [] }
}

function endWarmup(line: Line, warmup: number): void {
  line.now = warmup
  makeAllClear(line)
  restartHandling(line)
  restartSupplies(line, warmup)
  line.collector.restart(warmup)
}
