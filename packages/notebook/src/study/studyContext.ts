/** What a notebook can ask beside a sweep: lines compared, what drives the output, what is lost, what to promise. */
import type { RunsDone } from '@loopwright/charts/table'
import {
  type DriverResult,
  findDrivers,
  findLosses,
  type LossResult,
  type OrderResult,
  orderStations,
  type StudyOptions,
  sweepCarriers,
} from '@loopwright/study'
import type { PlaceRequest } from '@loopwright/study/change'
import { compareLines, type CompareResult, type GridResult, runGrid } from '@loopwright/study/compare'
import { formatProblems, mixGroups, type Scenario, stopGroups } from '@loopwright/scenario'
import type { RunCell } from '../cells/cell.ts'
import { type CompareStory, compareStory } from '../compare/compareStory.ts'
import { type DriverStory, driverStory } from '../drivers/driverStory.ts'
import type { Effects } from '../runner/effects.ts'
import { checkNames } from '../runner/knownNames.ts'
import { type ForecastResult, forecastOf } from '../forecast/forecastOf.ts'
import { type ForecastStory, forecastStory } from '../forecast/forecastStory.ts'
import { type GridLevels, gridLines } from '../grid/gridLines.ts'
import { type GridStory, gridStory } from '../grid/gridStory.ts'
import { type LossStory, lossStory } from '../losses/lossStory.ts'
import { type OrderStory, orderStory } from '../order/orderStory.ts'
import { period } from '../sweep/period.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import { linesProgress } from '../terminal/progressLine.ts'
import { movedStations } from './movedStations.ts'
import { type Simulated, simulatedCell } from './simulatedCell.ts'
import { simulatedWords } from './simulatedWords.ts'

/** What a notebook asks of any study. */
export interface StudyRequest {
  /** of each line; default 30 */
  readonly replications?: number
  /** default '1' */
  readonly seed?: string
}

/** What a notebook asks of a forecast. */
export interface ForecastRequest extends StudyRequest {
  /** shifts whose output makes a week, such as 10 for two a day on five days */
  readonly shiftsPerWeek: number
}

/** replications: of the check of the chosen order in fresh worlds */
export interface OrderRequest extends StudyRequest, PlaceRequest {}

/** levels of the factors: numbers of carriers, and values by path */
export interface GridRequest extends StudyRequest, GridLevels {}

export type StudyStory = CompareStory | OrderStory | DriverStory | LossStory | ForecastStory | GridStory
export type StudyResult = CompareResult | OrderResult | DriverResult | LossResult | ForecastResult | GridResult

/** Each study adds a cell that says what was simulated. */
export interface StudyContext {
  /** The scenario with stations in other zones: `moved({ S5: 'Z14' })`. */
  moved(zones: Readonly<Record<string, string>>): Scenario
  /** Runs several lines over the same simulated windows, the first as the one that the others are set beside. */
  compare(lines: Readonly<Record<string, Scenario>>, request?: StudyRequest): Promise<CompareResult>
  /** Chooses among the orders that the rules allow, and measures what the chosen one gains over today in fresh worlds. */
  order(request: OrderRequest): Promise<OrderResult>
  /** Changes each time, stop and share of the mix by 5 %: what limits the line. */
  drivers(request?: StudyRequest): Promise<DriverResult>
  /** Takes one cause after another out of the same shifts: units lost by each. */
  losses(request?: StudyRequest): Promise<LossResult>
  /** Units per shift and per week, and the overtime that the plan takes, of the line as it stands. */
  forecast(request: ForecastRequest): Promise<ForecastResult>
  /** Every setting of several factors in the same random worlds: `grid({ carriers: [8, 9, 10], set: { 'drive.speed': ['10 m/min', '15 m/min'] } })`. */
  grid(request: GridRequest): Promise<GridResult>
}

export interface StudyParts {
  readonly scenario: Scenario
  readonly scenarioFile: string
  readonly scenarioText: string
  readonly effects: Effects
  /** replace what the notebook asks for; undefined: they do not */
  readonly replications: number | undefined
  readonly seed: string | undefined
  readonly workers: number | undefined
  readonly long: true | undefined
}

/** where neither notebook nor caller says a number: enough for a first answer */
export const REPLICATIONS = 30
/** replications of every order before the first is dropped; with fewer the choice takes longer, not shorter */
const FIRST_STAGE = 20
const FIRST_STAGE_LEAST = 10
const SEED = '1'
/** what may be asked of any study */
const STUDY_NAMES = ['replications', 'seed']

/** @param show  takes the cell that says what was simulated */
export function studyContext(
  parts: StudyParts,
  show: (cell: RunCell) => void,
): { readonly context: StudyContext; readonly story: (result: StudyResult, options: StoryOptions) => StudyStory } {
  const { scenario } = parts
  const asked = new Map<string, number>()
  const compared = new WeakMap<CompareResult, readonly Scenario[]>()
  const ids = new WeakMap<StudyResult, string>()
  /** `compare`, `compare-2`, … */
  const told = <R extends StudyResult>(name: string, result: R, simulated: Simulated): R => {
    const times = (asked.get(name) ?? 0) + 1
    asked.set(name, times)
    const id = times === 1 ? name : `${name}-${times}`
    ids.set(result, id)
    const what = simulatedWords(result, period(scenario))
    show(simulatedCell(`${id}-simulated`, scenario, parts.scenarioFile, simulated, what))
    return result
  }
  const replicationsOf = ({ replications }: StudyRequest): number => parts.replications ?? replications ?? REPLICATIONS
  const options = (request: StudyRequest, what: string): StudyOptions => ({
    ...studyOptions(parts, request),
    onProgress: progressOf(parts.effects, what),
  })
  const recalled = recalling(parts)
  const groups = { stopGroups: stopGroups(scenario), mixGroups: mixGroups(scenario) }
  return {
    context: {
      moved: (zones) => movedStations(scenario, zones),
      compare: async (named, request = {}) => {
        checkNames('compare', request, STUDY_NAMES)
        const scenarios = Object.values(named)
        const lines = Object.entries(named).map(([name, each]) => ({ name, line: each.line, plan: each.plan?.unitsPerWindow ?? null }))
        const replications = replicationsOf(request)
        const result = await recalled('compare', request, [named], () =>
          compareLines(lines, { replications }, options(request, `${lines.length} lines compared`)),
        )
        compared.set(result, scenarios)
        return told('compare', result, result)
      },
      order: async (request) => {
        checkNames('order', request ?? null, ['move', 'zones', 'before', 'mine', ...STUDY_NAMES])
        const replications = replicationsOf(request)
        const firstStage = Math.max(FIRST_STAGE_LEAST, Math.min(FIRST_STAGE, replications))
        const result = await recalled('order', request, [scenario], () =>
          orderStations(
            scenario.line,
            { ...request, check: replications, firstStage },
            options(request, `where to put ${request.move.join(', ')}`),
          ),
        )
        const simulated = { seed: result.seed, replications, engineVersion: result.engineVersion, partial: result.partial }
        return told('order', result, simulated)
      },
      drivers: async (request = {}) => {
        checkNames('drivers', request, STUDY_NAMES)
        const replications = replicationsOf(request)
        const result = await recalled('drivers', request, [scenario], () =>
          findDrivers(scenario.line, { replications, ...groups }, options(request, 'what drives the output')),
        )
        return told('drivers', result, result)
      },
      losses: async (request = {}) => {
        checkNames('losses', request, STUDY_NAMES)
        const asked = { replications: replicationsOf(request), stopGroups: groups.stopGroups }
        const result = await recalled('losses', request, [scenario], () =>
          findLosses(scenario.line, asked, options(request, 'what is lost, and by what')),
        )
        return told('losses', result, result)
      },
      forecast: async (request) => {
        checkNames('forecast', request ?? null, ['shiftsPerWeek', ...STUDY_NAMES])
        const { sweep } = await recalled('forecast', request, [scenario], async () => {
          const made = await forecastRuns(parts, replicationsOf(request), request.shiftsPerWeek, options(request, 'the line as it stands'))
          return { partial: made.sweep.partial, sweep: made.sweep }
        })
        const result = forecastOf(scenario, sweep, request.shiftsPerWeek)
        return told('forecast', result, result.sweep)
      },
      grid: async (request) => {
        checkNames('grid', request ?? null, ['carriers', 'set', ...STUDY_NAMES])
        const { factors, points } = askedLines(parts, request)
        const base = { line: scenario.line, plan: scenario.plan?.unitsPerWindow ?? null }
        const replications = replicationsOf(request)
        const result = await recalled('grid', request, [points, factors, base], () =>
          runGrid(points, { factors, base, replications }, options(request, `${points.length} settings`)),
        )
        return told('grid', result, result)
      },
    },
    story: (result, options) => {
      const id = ids.get(result)
      const own = id === undefined ? options : { ...options, id }
      switch (result.kind) {
        case 'comparison':
          return compareStory(scenariosOf(compared, result), result, own)
        case 'station order':
          return orderStory(scenario, result, own)
        case 'drivers':
          return driverStory(scenario, result, own)
        case 'losses':
          return lossStory(scenario, result, own)
        case 'forecast':
          return forecastStory(scenario, result, options)
        case 'grid':
          return gridStory(scenario, result, own)
      }
    },
  }
}

function askedLines({ scenario, scenarioFile, scenarioText, effects }: StudyParts, levels: GridLevels): ReturnType<typeof gridLines> {
  const files = (path: string): string | null => effects.readBeside?.(scenarioFile, path) ?? null
  const lines = gridLines({ scenario, text: scenarioText, files }, levels)
  if (lines.points.length === 0) throw new RangeError(formatProblems(lines.problems, scenarioText, scenarioFile))
  return lines
}

function scenariosOf(compared: WeakMap<CompareResult, readonly Scenario[]>, result: CompareResult): readonly Scenario[] {
  const scenarios = compared.get(result)
  if (scenarios === undefined) throw new RangeError('this comparison was not made by this notebook; compareStory tells any')
  return scenarios
}

async function forecastRuns(
  parts: StudyParts,
  replications: number,
  shiftsPerWeek: number,
  options: StudyOptions,
): Promise<ForecastResult> {
  const { line, plan, calendar } = parts.scenario
  const shifts = calendar?.shifts ?? 1
  if (shifts !== 1) throw new RangeError(`a forecast takes a scenario that judges one shift; this one judges ${shifts} together`)
  const request = { counts: [line.carriers.count], replications, plan: plan?.unitsPerWindow ?? null }
  const sweep = await sweepCarriers(line, request, options)
  return forecastOf(parts.scenario, sweep, shiftsPerWeek)
}

/** Studies of the same lines, asked in the same way, need not be made again where the caller remembers them. */
export function recalling({
  effects: { recall },
  replications,
  seed,
}: Pick<StudyParts, 'effects' | 'replications' | 'seed'>): <R extends { readonly partial: boolean }>(
  name: string,
  request: object,
  lines: readonly unknown[],
  make: () => Promise<R>,
) => Promise<R> {
  return async (name, request, lines, make) =>
    recall === undefined ? await make() : await recall(name, [request, replications ?? null, seed ?? null, ...lines], make)
}

/** How every study of a notebook is carried out. */
export function studyOptions(
  { effects, seed, workers, long }: Pick<StudyParts, 'effects' | 'seed' | 'workers' | 'long'>,
  request: { readonly seed?: string },
): Omit<StudyOptions, 'onProgress'> {
  return {
    seed: seed ?? request.seed ?? SEED,
    store: effects.store ?? null,
    signal: effects.signal,
    ...(workers === undefined ? {} : { workers }),
    ...(long === undefined ? {} : { long }),
    ...(effects.pool === undefined ? {} : { pool: effects.pool }),
  }
}

export function progressOf(effects: Effects, what: string): (progress: RunsDone & { readonly what?: string }) => void {
  return timed(effects, (progress, seconds) => linesProgress(what, progress, seconds))
}

/** Tells progress as a line, with the seconds since the study began. */
export function timed<P>(
  effects: Pick<Effects, 'now' | 'progress'>,
  line: (progress: P, seconds: number) => string,
): (progress: P) => void {
  const started = effects.now().getTime()
  return (progress) => effects.progress(line(progress, (effects.now().getTime() - started) / 1000))
}
