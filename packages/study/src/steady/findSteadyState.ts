/** How long a line takes to forget its start, and what it makes from then on: MSER-5 on long runs, with guards. */
import { completeLine, type GivenLine, type LineSpec, tasksOf } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'
import { distributionMean, meanOf, type OutputInterval, outputInterval } from '@loopwright/stats'
import { mser5, type RunEnd, type WarmupCut, warmupSentence } from '@loopwright/stats/procedures'
import { checkReplications } from '../runs/asked.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { openPool, refuseLong, workOf } from '../runs/openPool.ts'
import { passagesOf } from '../runs/replicate.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'
import type { Passages } from '../runs/task.ts'

/** What a study of the start is asked. */
export interface SteadyRequest {
  /** ≥ 2; default 10 */
  readonly replications?: number
  /** intervals of the first look; default 200. It is doubled up to three times where no warm-up is found */
  readonly intervals?: number
}

/** How long the start shows, and what the line makes from then on; seconds, units per hour. */
export interface SteadyResult {
  readonly kind: 'steady state'
  readonly engineVersion: string
  readonly seed: string
  readonly replications: number
  /** ok: a cut is found; else why there is none, and no figure of a steady state is given */
  readonly status: 'ok' | 'not converged' | 'ended early' | 'stopped'
  /** at least five exchanges of the slowest station, and whole cycles of a fixed mix */
  readonly intervalSeconds: number
  readonly intervals: number
  /** length of the last runs, from an empty line on, without breaks */
  readonly runSeconds: number
  /** of the last runs: those that ended in gridlock, and out of products */
  readonly gridlocks: number
  readonly outOfProducts: number
  /** the larger of the cuts of output and of products in line; null without one */
  readonly cutSeconds: number | null
  /** cut and ten times as long judged: the run length that would do; null without a cut */
  readonly enoughSeconds: number | null
  /** after the cut; null without one */
  readonly outputPerHour: OutputInterval | null
  /** after the cut; null without one */
  readonly productsInLine: OutputInterval | null
  readonly output: WarmupCut | null
  readonly products: WarmupCut | null
  /** means over the runs of each interval, from an empty line on; null where a run ended early or was stopped */
  readonly series: { readonly unitsPerHour: readonly number[]; readonly products: readonly number[] } | null
  /** why there is no cut; null where there is one */
  readonly why: string | null
}

const DOUBLINGS = 3
/** of the first runs */
const INTERVALS = 200

/**
 * Looks for the warm-up of continuing production: breaks are left out, the line starts empty.
 *
 * @throws RangeError  if there are fewer than 2 replications
 * @see White, Cobb & Spratt, A comparison of five steady-state truncation heuristics for simulation (2000)
 * @example (await findSteadyState(line, { replications: 2, intervals: 60 }, { seed: '1', workers: 0 })).status // => 'ok'
 */
export async function findSteadyState(given: GivenLine, request: SteadyRequest, options: StudyOptions): Promise<SteadyResult> {
  const line = completeLine(given)
  const { replications = 10 } = request
  checkReplications(replications, 'a steady state needs', 2)
  const { pool, close } = openPool(options, { replications, moves: Number.POSITIVE_INFINITY, events: 0 })
  const runSeconds = (request.intervals ?? INTERVALS) * intervalOf(line)
  const longer = { ...line, breaks: [], window: { warmupSeconds: 0, endSeconds: runSeconds } }
  refuseLong(options, workOf(longer, [{ carriers: line.carriers.count, replications }]))
  let done = 0
  let total = 0
  const runs = async (longer: LineSpec): Promise<Passages[]> => {
    total += replications
    return await passagesOf(pool, longer, replications, options, (more) => {
      done += more
      // longer runs may follow
      options.onProgress?.({ done, total, settled: false, recalled: pool.recalled, precision: null })
    })
  }
  try {
    return await lookLonger(line, { ...request, replications, seed: options.seed }, runs)
  } finally {
    await close()
  }
}

/** Looks at runs twice as long, up to three times, until they have a steady part. */
async function lookLonger(
  line: LineSpec,
  request: SteadyRequest & { readonly seed: string; readonly replications: number },
  runs: (line: LineSpec) => Promise<Passages[]>,
): Promise<SteadyResult> {
  const { seed, replications } = request
  const intervalSeconds = intervalOf(line)
  let intervals = request.intervals ?? INTERVALS
  for (let doubled = 0; ; doubled += 1) {
    const runSeconds = intervals * intervalSeconds
    const found = await runs({ ...line, breaks: [], window: { warmupSeconds: 0, endSeconds: runSeconds } })
    const head = {
      kind: 'steady state',
      engineVersion: ENGINE_VERSION,
      seed,
      replications,
      intervalSeconds,
      intervals,
      runSeconds,
      gridlocks: found.filter(({ end }) => end === 'gridlock').length,
      outOfProducts: found.filter(({ end }) => end === 'out of products').length,
    } as const
    const none = { cutSeconds: null, enoughSeconds: null, outputPerHour: null, productsInLine: null }
    if (found.length < replications) {
      return { ...head, ...none, status: 'stopped', output: null, products: null, series: null, why: 'Stopped before the runs were done.' }
    }
    const series = found.map((run) => seriesOf(run, intervalSeconds, intervals))
    const end: RunEnd = endOf(found)
    const means = { output: acrossRuns(series.map((each) => each.output)), products: acrossRuns(series.map((each) => each.products)) }
    const output = mser5(means.output, end)
    const products = mser5(means.products, end)
    const told =
      end === 'time' ? { unitsPerHour: means.output.map((units) => (units / intervalSeconds) * 3600), products: means.products } : null
    const why = warmupSentence(output, end) ?? warmupSentence(products, end)
    if (why === null) {
      const cut = Math.max(output.delete!, products.delete!)
      const cutSeconds = cut * intervalSeconds
      const after = (of: 'output' | 'products'): number[] => series.map((each) => meanOf(each[of].slice(cut)))
      return {
        ...head,
        status: 'ok',
        cutSeconds,
        enoughSeconds: 11 * Math.max(cutSeconds, 5 * intervalSeconds),
        outputPerHour: outputInterval(after('output').map((units) => (units / intervalSeconds) * 3600)),
        productsInLine: outputInterval(after('products')),
        output,
        products,
        series: told,
        why,
      }
    }
    const early = output.status === 'ended early'
    if (early || doubled === DOUBLINGS)
      return { ...head, ...none, status: early ? 'ended early' : 'not converged', output, products, series: told, why }
    intervals *= 2
  }
}

/** Five cycles of the slowest station or more; of a fixed sequence of products, whole ones. */
function intervalOf(line: LineSpec): number {
  const exchangeSeconds = lawOrNull(line)?.exchangeSeconds ?? slowestWork(line)
  const cycle = line.mix.kind === 'pattern' ? line.mix.sequence.length : 1
  return Math.ceil(Math.ceil(5 / cycle) * cycle * exchangeSeconds)
}

/** Seconds of the longest mean work at a station, release too; where a line has no law. */
function slowestWork({ stations }: LineSpec): number {
  const works = stations.map((station) => {
    const longest = tasksOf(station).map(({ seconds }) =>
      Math.max(0, ...seconds.map((time) => (time === null ? 0 : distributionMean(time)))),
    )
    return longest.reduce((sum, seconds) => sum + seconds, distributionMean(station.releaseSeconds))
  })
  return Math.max(1, ...works)
}

/** Output, and products in line on average, in each interval. */
function seriesOf(
  { loadSeconds, unloadSeconds }: Passages,
  intervalSeconds: number,
  intervals: number,
): { output: number[]; products: number[] } {
  const output = new Array<number>(intervals).fill(0)
  const area = new Array<number>(intervals).fill(0)
  let inLine = 0
  let since = 0
  const advance = (to: number): void => {
    for (let at = since; at < to; ) {
      const interval = Math.min(intervals - 1, Math.floor(at / intervalSeconds))
      const until = Math.min(to, interval === intervals - 1 ? to : (interval + 1) * intervalSeconds)
      area[interval]! += inLine * (until - at)
      at = until
    }
    since = to
  }
  for (let came = 0, went = 0; came < loadSeconds.length || went < unloadSeconds.length; ) {
    const load = loadSeconds[came] ?? Number.POSITIVE_INFINITY
    const unload = unloadSeconds[went] ?? Number.POSITIVE_INFINITY
    advance(Math.min(load, unload))
    if (load <= unload) {
      came += 1
      inLine += 1
    } else {
      went += 1
      inLine -= 1
      output[Math.min(intervals - 1, Math.floor(unload / intervalSeconds))]! += 1
    }
  }
  advance(intervals * intervalSeconds)
  return { output, products: area.map((each) => each / intervalSeconds) }
}

function endOf(runs: readonly Passages[]): RunEnd {
  const reasons = runs.map(({ end }) => end)
  if (reasons.includes('gridlock')) return 'gridlock'
  return reasons.includes('out of products') ? 'out of products' : 'time'
}

function acrossRuns(series: readonly (readonly number[])[]): number[] {
  return series[0]!.map((_, interval) => meanOf(series.map((each) => each[interval]!)))
}
