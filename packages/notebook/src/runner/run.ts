/** The runner: a notebook's module in, its cells, its text on the terminal and its page out. */
import { visibleLine } from '@loopwright/charts/table'
import { type Problem, readScenario, type Scenario } from '@loopwright/scenario'
import type { Cell } from '../cells/cell.ts'
import { liveCell } from '../live/liveCell.ts'
import { inputsOf } from '../live/liveInputs.ts'
import { besideOrHere } from './besideOrHere.ts'
import { notebookContext } from './context.ts'
import type { Effects } from './effects.ts'
import { type Fault, NotebookFaults } from '../load/fault.ts'
import type { StepMark } from '../load/steps.ts'
import { thrownFault } from '../load/thrownFault.ts'
import { isNotebook } from './notebook.ts'
import { printer } from '../terminal/printer.ts'
import { TERMINAL_COLUMNS, type TerminalOptions } from '../terminal/terminalOptions.ts'
import { wrap } from '../terminal/wrap.ts'
import { stepper, type StepState } from './steps.ts'
import { writePage } from './writePage.ts'

/** How a notebook is run. */
export interface RunNotebookOptions {
  /** where the page goes; default `out/<name of the notebook>.html` */
  readonly out?: string
  /** replaces what the notebook asks for: for a quick look */
  readonly replications?: number
  readonly seed?: string
  /** threads; default: all cores */
  readonly workers?: number
  /** true: studies may take more than an hour of a core; default: one that would is refused */
  readonly long?: true
  /** of the terminal; default: 80 columns, no colours, no bars */
  readonly terminal?: TerminalOptions
  /** printed in the page's footer; default `loopwright notebook <file>` */
  readonly command?: string
}

/** What a notebook told, and where its page is. */
export type NotebookRun =
  | {
      /** `partial`: stopped by the signal; what was known by then has been printed */
      readonly status: 'done' | 'partial'
      readonly question: string
      readonly scenarioName: string
      readonly cells: readonly Cell[]
      /** path of the page; null where the run was stopped */
      readonly page: string | null
      /** warnings about the scenario */
      readonly problems: readonly Problem[]
      /** parts of the notebook that failed; each is told in its place, and the others are carried out all the same */
      readonly faults: readonly Fault[]
    }
  | {
      readonly status: 'wrong scenario'
      readonly scenarioFile: string
      readonly scenarioText: string
      readonly problems: readonly Problem[]
    }

/** What is told of a notebook while it is carried out. */
export interface RunHooks {
  /** the scenario is read; gives back what takes each cell as it comes */
  readonly onScenario: (read: {
    readonly question: string
    readonly scenario: Scenario
    readonly scenarioFile: string
  }) => (cell: Cell) => void
  readonly onStep?: (mark: StepMark, state: StepState) => void
}

export type CarriedOut =
  | Extract<NotebookRun, { readonly status: 'wrong scenario' }>
  | (Omit<Extract<NotebookRun, { readonly status: 'done' | 'partial' }>, 'page'> & {
      /** with what a page has besides */
      readonly pageCells: readonly Cell[]
    })

/** Reads the notebook and its scenario and carries out its body; writes and prints nothing. */
export async function carryOut(
  file: string,
  effects: Effects,
  options: Pick<RunNotebookOptions, 'replications' | 'seed' | 'workers' | 'long'>,
  hooks: RunHooks,
): Promise<CarriedOut> {
  const notebook = defaultExport(
    await effects.importModule(file).catch((error: unknown) => {
      // what its own code throws has a place in it
      throw (effects.places?.of(error) ?? null) === null
        ? error
        : new NotebookFaults([thrownFault(error, { line: 1, column: 1 }, { file, places: effects.places })])
    }),
  )
  if (!isNotebook(notebook))
    throw new TypeError(`${file} has no notebook as its default export: write \`export default notebook({ … }, …)\``)
  const { file: scenarioFile, text: scenarioText } = await besideOrHere(file, notebook.head.scenario, effects)
  const { readBeside, inOneGo } = effects
  const files = readBeside === undefined ? {} : { files: (path: string) => readBeside(scenarioFile, path) }
  const reading = () => readScenario(scenarioText, files)
  const read = await (inOneGo?.('the scenario was read: nothing was run', reading) ?? reading())
  const { scenario, problems } = read
  if (scenario === null) return { status: 'wrong scenario', scenarioFile, scenarioText, problems }

  const question = notebook.head.question ?? scenario.question
  const print = hooks.onScenario({ question, scenario, scenarioFile })
  const { replications, seed, workers, long } = options
  const { context, cells, inputs, settle } = notebookContext({
    notebookFile: file,
    scenario,
    read,
    scenarioFile,
    scenarioText,
    problems,
    effects,
    print,
    replications,
    seed,
    workers,
    long,
  })
  const { steps, faults, fail } = stepper({
    file,
    places: effects.places,
    show: context.show,
    onStep: hooks.onStep,
    settle,
    signal: effects.signal,
  })
  try {
    await notebook.body(context, steps)
    await settle()
  } catch (error) {
    if (!effects.signal.aborted) fail(error)
  }
  const offered =
    inputs.length === 0 ? undefined : [...inputs, ...inputsOf(read).filter(({ key }) => !inputs.some((own) => own.key === key))]
  const live = liveCell({ scenarioFile, scenarioText, read }, offered)
  const pageCells = live === null || cells.some(({ kind }) => kind === 'live') ? cells : [...cells, live]
  return { status: effects.signal.aborted ? 'partial' : 'done', question, scenarioName: scenario.name, cells, pageCells, problems, faults }
}

/**
 * Runs a notebook: reads its scenario, carries out its body, prints cells as they come, writes the page last and says where it is.
 *
 * @param file     path of the module
 * @param effects  all that touches the world outside
 * @throws NotebookFaults  if it is no program, or what it imports is not there
 * @throws TypeError  if the module's default export is no notebook; whatever reading its files throws
 * @example (await runNotebook('ring.ts', { ...effects, importModule: async () => ({ default: notebook({ title: 'Ring', scenario: 'ring.yaml' }, async ({ prose }) => prose('First.')) }) })).cells[0].kind // => 'prose'
 */
export async function runNotebook(file: string, effects: Effects, options: RunNotebookOptions = {}): Promise<NotebookRun> {
  const { print, end } = printer(effects.log, options.terminal)
  const carried = await carryOut(file, effects, options, {
    onScenario: ({ question }) => {
      effects.log(wrap(visibleLine(question), options.terminal?.columns ?? TERMINAL_COLUMNS))
      effects.log('')
      return print
    },
  })
  if (carried.status === 'wrong scenario') return carried
  end()
  const { status, question, scenarioName, cells, pageCells, problems, faults } = carried
  if (status === 'partial') return { status, question, scenarioName, cells, page: null, problems, faults }

  const page = options.out ?? `out/${baseName(file)}.html`
  const command = options.command ?? `loopwright notebook ${file}`
  const html = await writePage({ question, scenarioName, date: effects.now(), command }, pageCells).catch((error: unknown) => {
    // Ctrl-C in a terminal reaches the programs that make the page as well
    if (effects.signal.aborted) return null
    throw error
  })
  if (html === null || effects.signal.aborted) return { status: 'partial', question, scenarioName, cells, page: null, problems, faults }
  await effects.writeFile(page, html)
  effects.log(`\nPage: ${page}`)
  return { status: 'done', question, scenarioName, cells, page, problems, faults }
}

/** Loaders differ in how deep they put a default export. */
function defaultExport(module: unknown): unknown {
  let value = module
  for (let depth = 0; depth < 2 && typeof value === 'object' && value !== null && 'default' in value && !isNotebook(value); depth += 1)
    value = value.default
  return value
}

function baseName(file: string): string {
  const name = file.split(/[\\/]/).at(-1) ?? file
  return name.replace(/\.[cm]?[jt]s$/, '')
}
