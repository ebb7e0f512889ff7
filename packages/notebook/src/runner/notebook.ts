/** How a notebook is written: a TypeScript module whose default export is `notebook({ title, scenario }, body)`. */
import type { CarrierStudy, DriverResult, LossResult, OrderResult, SweepResult } from '@loopwright/study'
import type { CompareResult, GridResult } from '@loopwright/study/compare'
import type { CarrierSweepStory } from '../sweep/carrierSweepStory.ts'
import type { Cell } from '../cells/cell.ts'
import type { CompareStory } from '../compare/compareStory.ts'
import type { DriverStory } from '../drivers/driverStory.ts'
import type { ForecastResult } from '../forecast/forecastOf.ts'
import type { ForecastStory } from '../forecast/forecastStory.ts'
import type { GridStory } from '../grid/gridStory.ts'
import type { LossStory } from '../losses/lossStory.ts'
import type { OrderStory } from '../order/orderStory.ts'
import type { NotebookDecision } from '../decision/notebookDecision.ts'
import type { StudyContext, StudyRequest } from '../study/studyContext.ts'
import type { ChartSpec, ChartWords, RowsChart } from '../own/ownChart.ts'
import type { InputRange } from '../own/ownInput.ts'
import type { TableOptions } from '../own/ownTable.ts'
import type { OwnRow } from '../own/rows.ts'
import type { NotebookScenario } from '../own/scenarioWith.ts'
import { Mistake } from '../load/fault.ts'
import { checkNames } from './knownNames.ts'
import type { Steps } from './steps.ts'

/** What a notebook is called, and the scenario it is about. */
export interface NotebookHead {
  /** names the notebook in the terminal and in lists */
  readonly title: string
  /** path of the scenario file, from the folder of the notebook; where there is none, from the folder that the command is run in */
  readonly scenario: string
  /** heads the page; default: the question of the scenario */
  readonly question?: string
}

/** A question, and what is done to answer it. */
export interface Notebook {
  readonly kind: 'notebook'
  readonly head: NotebookHead
  /** `steps`: of a body that was split into its statements when it was loaded */
  readonly body: (context: NotebookContext, steps?: Steps) => Promise<void> | void
}

/** What a notebook can do. Each call adds cells, and prints them at once. */
export interface NotebookContext extends StudyContext {
  readonly scenario: NotebookScenario
  /** Simulates each carrier count in the same random worlds. Adds a cell that says so: the page's footer is made of it. */
  sweep(options: SweepRequest): Promise<SweepResult>
  /** Finds out how many carriers the loop needs, with as many runs as the answer takes. Adds a cell that says what was simulated. */
  carriers(options?: CarriersRequest): Promise<CarrierStudy>
  /** Reads a decision file and runs its alternatives in the same random worlds: what it tells are stories, as those of `story`. Adds a cell that says what was simulated. */
  decision(path: string, request?: StudyRequest): Promise<NotebookDecision>
  /** The parts of the story that a result tells, by name. Adds nothing by itself. */
  readonly story: StoryTeller
  /** Adds cells; what a tale has not, null, is left out. */
  show(...cells: readonly (Cell | null)[]): void
  /** Adds running text, in Markdown; `##` opens a section. Lines may be indented like the code around them. */
  prose(markdown: string): void
  /** Adds a chart of one's own, from rows: `chart({ x: 'carriers', y: 'units', rows })`. */
  chart(chart: RowsChart): void
  /** Adds a chart by a vega-lite specification with its data in it. */
  chart(spec: ChartSpec, words?: ChartWords): void
  /** Adds a table of one's own: `table([{ carriers: 8, units: 320 }])`. */
  table(rows: readonly OwnRow[], options?: TableOptions): void
  /** Lets the reader of the page change a value of the scenario: `input('speed', { from: 8, to: 20, step: 1, unit: 'm/min' })`. Gives back what the file says. */
  input(name: string, range: InputRange): number
}

/** One story for each kind of result. */
export interface StoryTeller {
  (result: SweepResult | CarrierStudy): CarrierSweepStory
  (result: CompareResult): CompareStory
  (result: OrderResult): OrderStory
  (result: DriverResult): DriverStory
  (result: LossResult): LossStory
  (result: ForecastResult): ForecastStory
  (result: GridResult): GridStory
}

/** What a notebook asks of a sweep. */
export interface SweepRequest {
  /** counts to try, from the least to the most, both included; or a list */
  readonly carriers: { readonly from: number; readonly to: number } | readonly number[]
  /** per count; default 30 */
  readonly replications?: number
  /** default '1' */
  readonly seed?: string
}

/** What a notebook asks about the number of carriers. */
export interface CarriersRequest {
  /** counts to begin with; default: around the law's lower knee. More are added where the best lies at an edge. */
  readonly carriers?: SweepRequest['carriers']
  /** share below the best that is near enough; default 0.01 */
  readonly within?: number
  /** confidence of the answer; default 0.95 */
  readonly level?: number
  /** most replications per count; default 1000 */
  readonly replicationsMax?: number
  /** default '1' */
  readonly seed?: string
}

/**
 * A notebook: which scenario, and what to do with it.
 *
 * @param head  title and scenario file
 * @param body  what to do, in order; may be async
 * @throws RangeError  if the head has a name that nobody reads, or lacks one
 * @example notebook({ title: 'How many carriers', scenario: 'line.yaml' }, async () => {}).kind // => 'notebook'
 */
export function notebook(head: NotebookHead, body: (context: NotebookContext) => Promise<void> | void): Notebook {
  checkNames('the head of a notebook', head, ['title', 'scenario', 'question'])
  for (const name of ['title', 'scenario'] as const)
    if (typeof head?.[name] !== 'string' || head[name].trim() === '')
      throw new Mistake(`the head of a notebook has no ${name}`, `Write \`${name}: '…'\`.`, name in (head ?? {}) ? name : 'notebook')
  if (typeof body !== 'function')
    throw new Mistake(
      'a notebook has a head and a body; the body is missing',
      'Write `notebook({ … }, async ({ … }) => { … })`.',
      'notebook',
    )
  return { kind: 'notebook', head, body }
}

export function isNotebook(value: unknown): value is Notebook {
  return typeof value === 'object' && value !== null && (value as { kind?: unknown }).kind === 'notebook'
}
