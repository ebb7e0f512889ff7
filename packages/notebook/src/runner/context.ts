/** What a running notebook works with: it collects cells and prints them as they come. */
import { isDeepStrictEqual } from 'node:util'
import type { Problem, Scenario, FileRead } from '@loopwright/scenario'
import { type CarrierStudy, chooseCarriers, type SweepResult, sweepCarriers } from '@loopwright/study'
import { carrierSweepStory } from '../sweep/carrierSweepStory.ts'
import { type Cell, oneView, tableCell } from '../cells/cell.ts'
import type { LiveInput } from '../live/liveInput.ts'
import { chartFault } from '../own/drawnChart.ts'
import { type ChartSpec, type ChartWords, ownChart, type RowsChart } from '../own/ownChart.ts'
import { ownInput } from '../own/ownInput.ts'
import { ownTable } from '../own/ownTable.ts'
import { scenarioWith } from '../own/scenarioWith.ts'
import { notebookDecision } from '../decision/notebookDecision.ts'
import type { Effects } from './effects.ts'
import type { CarriersRequest, NotebookContext, StoryTeller, SweepRequest } from './notebook.ts'
import { Mistake } from '../load/fault.ts'
import { checkNames, shown, withKnownNames } from './knownNames.ts'
import { dedent } from '../terminal/plainText.ts'
import { studyProgressLine, sweepProgressLine } from '../terminal/progressLine.ts'
import { REPLICATIONS, type StudyResult, recalling, studyContext, studyOptions, timed } from '../study/studyContext.ts'
import { sweepCell } from '../sweep/sweepCell.ts'

export interface ContextParts {
  readonly notebookFile: string
  readonly scenario: Scenario
  readonly scenarioFile: string
  readonly scenarioText: string
  /** the same as it was read */
  readonly read: FileRead
  /** warnings about the scenario */
  readonly problems: readonly Problem[]
  readonly effects: Effects
  readonly print: (cell: Cell) => void
  /** replace what the notebook asks for; undefined: they do not */
  readonly replications: number | undefined
  readonly seed: string | undefined
  readonly workers: number | undefined
  readonly long: true | undefined
}

/** The context, and the cells that come to be in it. */
export function notebookContext(parts: ContextParts): {
  readonly context: NotebookContext
  readonly cells: readonly Cell[]
  /** what the reader of the page may change, where the notebook says so */
  readonly inputs: readonly LiveInput[]
  /** Waits for what was asked for and not waited for; throws what is wrong with it. */
  readonly settle: () => Promise<void>
} {
  const { scenario, print } = parts
  const cells: Cell[] = []
  const { readBeside } = parts.effects
  const storyOptions = {
    scenarioFile: parts.scenarioFile,
    scenarioText: parts.scenarioText,
    problems: parts.problems,
    notes: parts.read.notes,
    read: parts.read,
    readBeside: (path: string) => readBeside?.(parts.scenarioFile, path) ?? null,
  }
  let proses = 0
  let sweeps = 0
  let charts = 0
  let tables = 0
  const inputs: LiveInput[] = []
  const checks: { readonly cell: Cell; readonly from: Error; readonly fault: Promise<string | null> }[] = []
  const keep = (cell: Cell): void => {
    cells.push(cell)
    print(cell)
  }
  /** two studies of one line may be warned of the same thing in different words: `warning-limits`, `warning-limits-2`, … */
  const freeId = (id: string): string => {
    for (let times = 1; ; times += 1) {
      const own = times === 1 ? id : `${id}-${times}`
      if (cells.every((other) => other.id !== own)) return own
    }
  }
  const show = (...shown: readonly (Cell | null)[]): void => {
    for (const cell of shown) {
      if (cell === null) continue
      // a story repeats what was simulated, which the study has shown already
      if (cell.kind === 'sweep' && cells.some((other) => other.kind === 'sweep' && other.sentence === cell.sentence)) continue
      // what the scenario is warned of stands in every story: it is said once
      if (cell.kind === 'caution' && cells.some((other) => isDeepStrictEqual(other, cell))) continue
      if (cell.kind === 'caution') {
        keep({ ...cell, id: freeId(cell.id) })
        continue
      }
      if (cells.some((other) => other.id === cell.id)) throw new RangeError(`two cells have the id "${cell.id}"; give each its own`)
      keep(cell)
    }
  }
  const told = <R extends SweepResult | CarrierStudy>(result: R): R => {
    sweeps += 1
    const cell = sweepCell(scenario, result, parts.scenarioFile)
    show(sweeps === 1 ? cell : { ...cell, id: `sweep-${sweeps}` })
    return result
  }
  const studies = studyContext(parts, show)
  const recalled = recalling(parts)
  const story = (result: SweepResult | CarrierStudy | StudyResult) =>
    result.kind === 'carrier sweep' || result.kind === 'carrier study'
      ? carrierSweepStory(scenario, result, storyOptions)
      : studies.story(result, storyOptions)
  const context: NotebookContext = withKnownNames('a notebook', {
    ...studies.context,
    scenario: scenarioWith({ file: parts.scenarioFile, text: parts.scenarioText, readBeside: storyOptions.readBeside }, scenario),
    show,
    chart: (given: RowsChart | ChartSpec, words?: ChartWords) => {
      const from = new Error()
      charts += 1
      const figure = ownChart(given, words)
      const id = words?.id ?? ('rows' in given ? (given as RowsChart).id : undefined) ?? `chart-${charts}`
      const cell: Cell = { kind: 'chart', id, views: oneView(figure) }
      show(cell)
      if (figure.picture.kind === 'chart') checks.push({ cell, from, fault: chartFault(figure.picture.spec) })
    },
    table: (rows, options) => {
      tables += 1
      show(tableCell(options?.id ?? `table-${tables}`, ownTable(rows, options)))
    },
    input: (name, range) => {
      const made = ownInput(parts.read, name, range)
      if (inputs.some(({ key }) => key === made.key)) throw new Mistake(`input('${name}') stands twice`, 'Write it once.', name)
      inputs.push(made)
      return Number(/^-?[\d.]+/.exec(made.file)?.[0])
    },
    prose: (markdown) => {
      proses += 1
      show({ kind: 'prose', id: `prose-${proses}`, markdown: dedent(markdown) })
    },
    sweep: async (request) => {
      checkNames('sweep', request ?? null, ['carriers', 'replications', 'seed'])
      return told(await recalled('sweep', request, [scenario], () => sweep(parts, request)))
    },
    carriers: async (request) => {
      checkNames('carriers', request, ['carriers', 'within', 'level', 'replicationsMax', 'seed'])
      return told(await recalled('carriers', request ?? {}, [scenario], () => carriers(parts, request ?? {})))
    },
    decision: async (path, request = {}) => await notebookDecision(parts, show, recalled, path, request),
    // each kind of result has its own story, which the compiler does not follow through a union
    story: story as StoryTeller,
  })
  /** What can only be known when a chart is drawn: one that shows nothing is taken back. */
  const settle = async (): Promise<void> => {
    for (const { cell, from, fault } of checks.splice(0)) {
      const message = await fault
      if (message === null) continue
      cells.splice(cells.indexOf(cell), 1)
      throw Object.assign(new Error(message), { stack: (from.stack ?? '').replace(/^Error/, `Error: ${message}`) })
    }
  }
  return { context, cells, inputs, settle }
}

async function sweep(parts: ContextParts, request: SweepRequest): Promise<SweepResult> {
  const { scenario, effects } = parts
  const counts = countsOf(request.carriers)
  const replications = parts.replications ?? request.replications ?? REPLICATIONS
  const plan = scenario.plan?.unitsPerWindow ?? null
  return await sweepCarriers(
    scenario.line,
    { counts, replications, plan },
    {
      ...studyOptions(parts, request),
      onProgress: timed(effects, (progress, seconds) => sweepProgressLine(counts, progress, seconds)),
    },
  )
}

async function carriers(parts: ContextParts, request: CarriersRequest): Promise<CarrierStudy> {
  const { scenario, effects } = parts
  const most = parts.replications ?? request.replicationsMax
  return await chooseCarriers(
    scenario.line,
    {
      plan: scenario.plan?.unitsPerWindow ?? null,
      ...(request.carriers === undefined ? {} : { counts: countsOf(request.carriers) }),
      ...(request.within === undefined ? {} : { within: request.within }),
      ...(request.level === undefined ? {} : { level: request.level }),
      ...(most === undefined ? {} : { replicationsMax: most }),
    },
    {
      ...studyOptions(parts, request),
      onProgress: timed(effects, studyProgressLine),
    },
  )
}

/** @throws RangeError  if they are neither a list nor a range, `from` lies above `to`, or one of them is no whole number ≥ 1 */
export function countsOf(carriers: SweepRequest['carriers']): readonly number[] {
  if (Array.isArray(carriers)) return carriers
  if (typeof carriers !== 'object' || carriers === null)
    throw new Mistake(
      `carriers are numbers to try, not ${shown(carriers)}`,
      'Write `carriers: { from: 5, to: 12 }` or `carriers: [5, 8, 12]`.',
      'carriers',
    )
  checkNames('a range of carriers', carriers, ['from', 'to'])
  const { from, to } = carriers as { readonly from: number; readonly to: number }
  if (!Number.isInteger(from) || !Number.isInteger(to) || from < 1 || from > to) {
    throw new RangeError(`carriers from ${from} to ${to}: both must be whole numbers, from 1 on, the smaller first`)
  }
  return Array.from({ length: to - from + 1 }, (_, index) => from + index)
}
