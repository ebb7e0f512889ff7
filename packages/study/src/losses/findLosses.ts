/** Units lost by cause: the same shifts are run again with one cause after another taken out, until nothing is left to lose by. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'
import { type OutputInterval, outputInterval } from '@loopwright/stats'
import { pairedDifference, type PairedDifference } from '@loopwright/stats/worlds'
import { checkReplications } from '../runs/asked.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { type LossCauseOptions, type LossKind, lossCauses } from './lossCauses.ts'
import { refuseLong, workOf } from '../runs/openPool.ts'
import { endedBy, inCommon, type Runner, unitsOf, withRunner } from '../runs/runner.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'
import { withCarriers } from '../change/withCarriers.ts'

/** What a study of losses is asked. */
export interface LossRequest extends LossCauseOptions {
  /** ≥ 2 */
  readonly replications: number
}

/** From the forecast to the ideal, one cause after another; units per window. */
export interface LossResult {
  readonly kind: 'losses'
  readonly engineVersion: string
  readonly seed: string
  readonly replications: number
  readonly partial: boolean
  readonly carriers: number
  /** the count with which no carriers are short, taken before the runs */
  readonly bestCarriers: number
  /** replications in which the line as it stands stood still for good */
  readonly gridlocks: number
  /** replications in which it ran out of products */
  readonly outOfProducts: number
  /** the line as it stands, units per window; null below 2 replications */
  readonly forecast: OutputInterval | null
  /** without any of the causes */
  readonly ideal: OutputInterval | null
  /** ideal less forecast: the sum of the steps, in every replication */
  readonly gap: PairedDifference | null
  readonly causes: readonly Loss[]
  /** what the causes bring together beyond the sum of what each brings alone; null below 2 replications */
  readonly interaction: PairedDifference | null
}

/** What one cause takes; units per window. */
export interface Loss {
  readonly kind: LossKind
  readonly name: string
  /** units gained by taking this cause out after all before it: these sum to the gap */
  readonly step: PairedDifference
  /** units gained by taking this cause alone out of the line as it stands */
  readonly alone: PairedDifference
}

const PILOT = 12
/** counts of the pilot; where more are between the knees of the law, as many as this, evenly */
const PILOT_COUNTS = 40

/**
 * The loss waterfall: from the forecast to the ideal, one cause after another, in a fixed order, all in the same worlds.
 *
 * @throws RangeError  if there are fewer than 2 replications, or the line cannot take the best count
 * @example (await findLosses(line, { replications: 5 }, { seed: '1', workers: 0 })).causes.map(({ name }) => name) // => ['jam', 'breaks', 'exchange at B', 'spread of task times', 'shortage of carriers']
 */
export async function findLosses(given: GivenLine, request: LossRequest, options: StudyOptions): Promise<LossResult> {
  const line = completeLine(given)
  const { replications } = request
  checkReplications(replications, 'losses need', 2)
  // each cause goes after those before it, and alone
  const least = 2 * lossCauses(line, { ...request, bestCarriers: line.carriers.count }).length * replications
  refuseLong(options, workOf(line, [{ carriers: line.carriers.count, replications: least }]))
  return await withRunner(options, null, (runner) => waterfall(line, request, options.seed, runner))
}

async function waterfall(line: LineSpec, request: LossRequest, seed: string, runner: Runner): Promise<LossResult> {
  const { replications } = request
  const bestCarriers = request.bestCarriers ?? (await bestCount(line, seed, runner))
  const causes = lossCauses(line, { ...request, bestCarriers })
  const steps = [line]
  for (const { without } of causes) steps.push(without(steps.at(-1)!))
  const alone = causes.map(({ without }) => without(line))
  // the first step is the first cause alone
  const lines = [...steps, ...alone.slice(1)]
  runner.expect(lines.length * replications)
  const rows = inCommon(await runner.run(lines, { from: 0, to: replications }))
  const units = rows.map(unitsOf)
  const n = units[0]!.length
  const head = {
    kind: 'losses',
    engineVersion: ENGINE_VERSION,
    seed,
    replications,
    partial: n < replications,
    carriers: line.carriers.count,
    bestCarriers,
    gridlocks: endedBy(rows[0]!, 'gridlock'),
    outOfProducts: endedBy(rows[0]!, 'out of products'),
  } as const
  if (n < 2) return { ...head, forecast: null, ideal: null, gap: null, causes: [], interaction: null }
  const [forecast, ideal] = [units[0]!, units[causes.length]!]
  const aloneUnits = causes.map((_, index) => (index === 0 ? units[1]! : units[causes.length + index]!))
  const sumAlone = forecast.map((made, j) => aloneUnits.reduce((sum, each) => sum + each[j]! - made, 0))
  const gap = ideal.map((made, j) => made - forecast[j]!)
  return {
    ...head,
    forecast: outputInterval(forecast),
    ideal: outputInterval(ideal),
    gap: pairedDifference(ideal, forecast),
    causes: causes.map(({ kind, name }, index) => ({
      kind,
      name,
      step: pairedDifference(units[index + 1]!, units[index]!),
      alone: pairedDifference(aloneUnits[index]!, forecast),
    })),
    interaction: pairedDifference(gap, sumAlone),
  }
}

/** The best count of a pilot in other worlds; the line's own unless another is shown to make more. */
async function bestCount(line: LineSpec, seed: string, runner: Runner): Promise<number> {
  const own = line.carriers.count
  const lineLaw = lawOrNull(line)
  if (lineLaw === null) return own
  const { carriersLow, carriersHigh } = lineLaw
  if (carriersLow === null || carriersHigh === null || typeof line.carriers.start !== 'string') return own
  const last = Math.min(line.zones.length - 1, Math.max(carriersHigh, carriersLow) + 1)
  const from = Math.max(1, Math.min(carriersLow, last))
  const tried = Math.min(PILOT_COUNTS, last - from + 1)
  const apart = tried === 1 ? 0 : (last - from) / (tried - 1)
  const counts = Array.from({ length: tried }, (_, index) => Math.round(from + index * apart)).filter((count) => count !== own)
  runner.expect((counts.length + 1) * PILOT, 'how many carriers are best', true)
  const worlds = { seed: `${seed}-pilot`, from: 0, to: PILOT }
  const units = inCommon(await runner.run([line, ...counts.map((count) => withCarriers(line, count))], worlds)).map(unitsOf)
  if (units[0]!.length < 2) return own
  let best = own
  let bestGain = 0
  counts.forEach((count, index) => {
    const { mean, status } = pairedDifference(units[index + 1]!, units[0]!)
    if (mean > bestGain && status !== 'no difference shown') [best, bestGain] = [count, mean]
  })
  return best
}
