import { setImmediate } from 'node:timers/promises'
import type { DoubtedInput } from '@loopwright/measure'
import type { Cell, Tale } from '@loopwright/notebook'
import { inputDoubt, type RedrawnLine, sweepCarriers } from '@loopwright/study'
import type { Store } from '@loopwright/study/machine'
import { type Assembled, assembled } from '../assembled.ts'
import { type DataFlags, redrawnData } from '../dataFolder.ts'
import { type Doubted, doubtDocument } from '../documents/data/doubtDocument.ts'
import { forecastDocument } from '../documents/forecastDocument.ts'
import { openStore, type StoreFlags, tellStore } from '../keptRuns.ts'
import { loadScenario } from '../loadScenario.ts'
import { countdown } from '../shell/countdown.ts'
import { progress } from '../shell/progress.ts'
import { Misuse, type Shell } from '../shell/shell.ts'
import { refused } from '../studyCommand.ts'
import { type OutputFlags, storyOptions, tell } from '../output/tell.ts'
import { type ThreadFlags, threadsOf } from '../threads.ts'
import { checkOutputs } from '../output/writeTables.ts'

export interface ForecastFlags extends OutputFlags, StoreFlags, ThreadFlags, DataFlags {
  readonly replications: number
  readonly seed: string
  /** folder of tables that the scenario's times, stops and shares come from; their doubt is simulated too */
  readonly data?: string
  /** redrawn lines. Default: 100 */
  readonly draws?: number
  /** default: shifts of a day on five days; without a calendar there are no weeks */
  readonly shiftsPerWeek?: number
}

/** redrawn lines where nothing else is said */
const DRAWS = 100

/** What may be promised per shift and per week, and the overtime that the plan takes, of the line as it stands. */
export async function forecast(shell: Shell, file: string, flags: ForecastFlags, command: string): Promise<number> {
  const measured = flags.data === undefined ? null : await assembled(shell, file, flags.data, flags, flags.seed)
  const source = measured?.source ?? (await loadScenario(shell, file, flags.variation))
  const { line, plan, calendar } = source.scenario
  const { replications, seed } = flags
  if (calendar !== null && calendar.shifts !== 1)
    throw new Misuse(
      `a forecast is of one shift; the scenario judges ${calendar.shifts} together: write one of them under "calendar: judge:"`,
    )
  await checkOutputs(shell, flags)
  const told = progress(shell, `what may be promised, ${replications} replications, seed ${seed}`, replications)
  const store = await openStore(shell, flags)
  const sweep = await refused(shell, () =>
    sweepCarriers(
      line,
      { counts: [line.carriers.count], replications, plan: plan?.unitsPerWindow ?? null },
      { seed, store, signal: shell.signal, onProgress: told.onProgress, ...threadsOf(flags, shell) },
    ),
  )
  told.end(sweep.partial)
  tellStore(shell, store)
  const doubt = measured === null || sweep.partial ? null : await doubted(shell, file, measured, flags, store)
  const notebook = await import('@loopwright/notebook')
  const data = measured === null ? null : await import('@loopwright/notebook/data')
  const shiftsPerWeek = flags.shiftsPerWeek ?? notebook.usualShiftsPerWeek(source.notes)
  const result = notebook.forecastOf(source.scenario, sweep, shiftsPerWeek)
  return await tell(shell, flags, {
    partial: sweep.partial || doubt?.result.partial === true,
    document: () => ({
      ...forecastDocument(source, result),
      inputDoubt: doubt === null ? null : doubtDocument(doubt, data!.doubtOf(doubt.result, doubt.inputs), measured!.folder),
    }),
    tale: () =>
      sweep.counts[0]!.replications === 0
        ? notebook.emptyTale('Stopped before the first shift was simulated: nothing to tell.')
        : withData(
            notebook.forecastStory(source.scenario, result, storyOptions(source, { ...flags, partial: sweep.partial })),
            [
              ...(measured === null ? [] : data!.folderWarnings('data', dataOf(measured))),
              ...(doubt === null ? [] : data!.doubtStory(source.scenario, doubt.result, doubt.inputs).cells),
            ],
            measured === null ? [] : data!.folderCells('data', measured.folder.files),
          ),
    name: source.scenario.name,
    command,
  })
}

/** What the data do not know stands right behind the answer, what was read of them at the end. */
function withData({ question, cells }: Tale, doubt: readonly Cell[], read: readonly Cell[]): Tale {
  const [answer, ...rest] = cells
  return { question, cells: [answer!, ...doubt, ...rest, ...read] }
}

const dataOf = ({ folder: { files, unused }, assembly: { notes } }: Assembled) => ({ files, unused, notes })

/** The lines that others might have measured, simulated beside the one of the data. */
async function doubted(
  shell: Shell,
  file: string,
  { folder, source, skeleton }: Assembled,
  flags: ForecastFlags,
  store: Store | null,
): Promise<Doubted> {
  const { draws = DRAWS, seed } = flags
  const { assemble } = await import('@loopwright/measure')
  const files = { files: (name: string) => shell.readBeside(file, name) }
  const counting = countdown(shell, 'lines as others might have measured them', draws)
  const redrawn: RedrawnLine[] = []
  let inputs: readonly DoubtedInput[] = []
  for (let draw = 0; draw < draws && !shell.signal.aborted; draw++) {
    counting.at(draw)
    const one = await redrawnData(folder.data, seed, draw)
    inputs = one.inputs
    const { scenario, faults } = assemble(skeleton.text, one.data, files)
    if (scenario === null) throw new Error(`a redrawn scenario does not fit: ${faults.join('; ')}`)
    redrawn.push({ line: scenario.line, levels: one.levels })
    await setImmediate()
  }
  counting.end()
  const told = progress(shell, `what the data do not know, ${draws} redrawn lines, seed ${seed}`, 4 * draws)
  const result = await refused(shell, () =>
    inputDoubt(
      source.scenario.line,
      { redrawn },
      { seed, store, signal: shell.signal, onProgress: told.onProgress, ...threadsOf(flags, shell) },
    ),
  )
  told.end(result.partial)
  return { result, inputs }
}
