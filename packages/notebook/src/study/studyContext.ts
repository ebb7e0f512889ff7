/** What a notebook can ask beside a sweep: lines compared, what drives the output, what is lost, what to promise. */
import type { Scenario } from '@loopwright/scenario'
import {
  type CompareResult,
  carrierSweep,
  compareLines,
  type DriverResult,
  driverStudy,
  type LossResult,
  lossWaterfall,
  type OrderResult,
  type Runner,
  type RunnerProgress,
  stationOrder,
  threadRunner,
  workingSeconds,
} from '@loopwright/study'
import type { SweepStoryOptions } from '../carrierSweepStory.ts'
import type { RunCell } from '../cell.ts'
import { type CompareStory, compareStory } from '../compare/compareStory.ts'
import { type DriverStory, driverStory } from '../drivers/driverStory.ts'
import type { Effects } from '../effects.ts'
import { forecast } from '../forecast/forecast.ts'
import { type ForecastResult, type ForecastStory, forecastStory } from '../forecast/forecastStory.ts'
import { type LossStory, lossStory } from '../losses/lossStory.ts'
import { type OrderStory, orderStory } from '../order/orderStory.ts'
import { mixGroups, stopGroups } from './groups.ts'
import { linesProgress } from './linesProgress.ts'
import { movedStations } from './movedStations.ts'
import { type PlaceRequest, placeRules } from './placeRules.ts'
import { type Simulated, studyCell } from './studyCell.ts'

export interface StudyRequest {
  /** of each line; default 30 */
  readonly replications?: number
  /** default '1' */
  readonly seed?: string
}

export interface ForecastRequest extends StudyRequest {
  /** shifts whose output makes a week, such as 10 for two a day on five days */
  readonly shiftsPerWeek: number
}

/** replications: of the check of the chosen order in fresh worlds */
export interface OrderRequest extends StudyRequest, PlaceRequest {}

export type StudyStory = CompareStory | OrderStory | DriverStory | LossStory | ForecastStory
export type StudyResult = CompareResult | OrderResult | DriverResult | LossResult | ForecastResult

/** Each study adds a cell that says what was simulated. */
export interface StudyContext {
  /** The scenario with stations in other zones: `moved({ S5: 'Z14' })`. */
  moved(zones: Readonly<Record<string, string>>): Scenario
  /** Runs several lines in the same random worlds, the first as the one that the others are set beside. */
  compare(lines: Readonly<Record<string, Scenario>>, request?: StudyRequest): Promise<CompareResult>
  /** Chooses among the orders that the rules allow, and measures what the chosen one gains over today in fresh worlds. */
  order(request: OrderRequest): Promise<OrderResult>
  /** Changes each time, stop and share of the mix by 5 %: what limits the line. */
  drivers(request?: StudyRequest): Promise<DriverResult>
  /** Takes one cause after another out of the same shifts: units lost by each. */
  losses(request?: StudyRequest): Promise<LossResult>
  /** Units per shift and per week, and the overtime that the plan takes, of the line as it stands. */
  forecast(request: ForecastRequest): Promise<ForecastResult>
}

export interface StudyParts {
  readonly scenario: Scenario
  readonly scenarioFile: string
  readonly effects: Effects
  /** replace what the notebook asks for; undefined: they do not */
  readonly replications: number | undefined
  readonly seed: string | undefined
  readonly workers: number | undefined
}

const REPLICATIONS = 30
/** replications of every order before the first is dropped; with fewer the choice takes longer, not shorter */
const FIRST_STAGE = 20
const FIRST_STAGE_LEAST = 10
const SEED = '1'

/** @param show  takes the cell that says what was simulated */
export function studyContext(
  parts: StudyParts,
  show: (cell: RunCell) => void,
): { readonly context: StudyContext; readonly story: (result: StudyResult, options: SweepStoryOptions) => StudyStory } {
  const { scenario } = parts
  const asked = new Map<string, number>()
  const compared = new WeakMap<CompareResult, readonly Scenario[]>()
  const ids = new WeakMap<StudyResult, string>()
  /** `compare`, `compare-2`, … */
  const told = <R extends StudyResult>(name: string, result: R, simulated: Simulated, what: string): R => {
    const times = (asked.get(name) ?? 0) + 1
    asked.set(name, times)
    const id = times === 1 ? name : `${name}-${times}`
    ids.set(result, id)
    show(studyCell(`${id}-simulated`, scenario, parts.scenarioFile, simulated, what))
    return result
  }
  const numbers = ({ replications, seed }: StudyRequest): { readonly replications: number; readonly seed: string } => ({
    replications: parts.replications ?? replications ?? REPLICATIONS,
    seed: parts.seed ?? seed ?? SEED,
  })
  const groups = { stopGroups: stopGroups(scenario.line), mixGroups: mixGroups(scenario.line) }
  return {
    context: {
      moved: (zones) => movedStations(scenario, zones),
      compare: async (named, request = {}) => {
        const scenarios = Object.values(named)
        const lines = Object.entries(named).map(([name, each]) => ({ name, line: each.line, plan: each.plan?.unitsPerWindow ?? null }))
        const result = await onThreads(parts, `${lines.length} lines compared`, (runner) => compareLines(lines, numbers(request), runner))
        compared.set(result, scenarios)
        return told('compare', result, result, `${lines.length} lines compared in the same random worlds`)
      },
      order: async (request) => {
        const { replications, seed } = numbers(request)
        const firstStage = Math.max(FIRST_STAGE_LEAST, Math.min(FIRST_STAGE, replications))
        const rules = placeRules(scenario.line, request)
        const result = await onThreads(parts, `where to put ${request.move.join(', ')}`, (runner) =>
          stationOrder(scenario.line, { seed, check: replications, firstStage, ...rules }, runner),
        )
        const simulated = { seed, replications, engineVersion: result.engineVersion, partial: result.partial }
        return told(
          'order',
          result,
          simulated,
          `${result.candidates.length} station orders; the chosen one and today’s again in fresh worlds`,
        )
      },
      drivers: async (request = {}) => {
        const result = await onThreads(parts, 'what drives the output', (runner) =>
          driverStudy(scenario.line, { ...numbers(request), ...groups }, runner),
        )
        return told('drivers', result, result, `${result.drivers.length} drivers, each up and down in the same random worlds`)
      },
      losses: async (request = {}) => {
        const result = await onThreads(parts, 'what is lost, and by what', (runner) =>
          lossWaterfall(scenario.line, { ...numbers(request), stopGroups: groups.stopGroups }, runner),
        )
        return told('losses', result, result, `${result.causes.length} causes taken out of the same random worlds`)
      },
      forecast: async (request) => {
        const result = await forecastRuns(parts, numbers(request), request.shiftsPerWeek)
        return told('forecast', result, result.sweep, 'The line as it stands')
      },
    },
    story: (result, options) => {
      const id = ids.get(result)
      switch (result.kind) {
        case 'comparison':
          return compareStory(scenariosOf(compared, result), result, id === undefined ? options : { ...options, id })
        case 'station order':
          return orderStory(scenario, result, id)
        case 'drivers':
          return driverStory(scenario, result, id)
        case 'losses':
          return lossStory(scenario, result, id)
        case 'forecast':
          return forecastStory(scenario, result, options)
      }
    },
  }
}

function scenariosOf(compared: WeakMap<CompareResult, readonly Scenario[]>, result: CompareResult): readonly Scenario[] {
  const scenarios = compared.get(result)
  if (scenarios === undefined) throw new RangeError('this comparison was not made by this notebook; compareStory tells any')
  return scenarios
}

async function forecastRuns(
  parts: StudyParts,
  request: { readonly replications: number; readonly seed: string },
  shiftsPerWeek: number,
): Promise<ForecastResult> {
  const { line, plan, calendar } = parts.scenario
  const shifts = calendar?.shifts ?? 1
  if (shifts !== 1) throw new RangeError(`a forecast takes a scenario that judges one shift; this one judges ${shifts} together`)
  const planned = plan?.unitsPerWindow ?? null
  const { effects, workers } = parts
  const sweep = await carrierSweep(line, [line.carriers.count], {
    ...request,
    plan: planned,
    store: effects.store ?? null,
    signal: effects.signal,
    onProgress: progressOf(effects, 'the line as it stands'),
    ...(workers === undefined ? {} : { workers }),
  })
  const { units } = sweep.counts[0]!
  return { kind: 'forecast', sweep, ...forecast(units, { plan: planned, netSeconds: workingSeconds(line), shiftsPerWeek }) }
}

async function onThreads<T>({ effects, workers }: StudyParts, what: string, study: (runner: Runner) => Promise<T>): Promise<T> {
  const runner = threadRunner({
    signal: effects.signal,
    store: effects.store ?? null,
    onProgress: progressOf(effects, what),
    ...(workers === undefined ? {} : { workers }),
  })
  try {
    return await study(runner)
  } finally {
    await runner.close()
  }
}

function progressOf(effects: Effects, what: string): (progress: Omit<RunnerProgress, 'recalled'>) => void {
  const started = effects.now().getTime()
  return (progress) => effects.progress(linesProgress(what, progress, (effects.now().getTime() - started) / 1000))
}
