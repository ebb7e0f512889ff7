import { formatDuration } from '@loopwright/charts/table'
import type { LineSpec } from '@loopwright/line'
import { carrierStays, ENGINE_VERSION, type EventWish, type TraceColumns, traceRun } from '@loopwright/study'
import type { Tale } from '@loopwright/notebook'
import type { TraceEvent } from '@loopwright/notebook/trace'
import { parseQuantity, type Scenario, titleOf } from '@loopwright/scenario'
import { isPage } from '../options/arguments.ts'
import type { CsvStyle } from '../output/csv.ts'
import { traceHead } from '../documents/traceDocument.ts'
import { STOP_EVENTS, traceEvents } from '../documents/traceEvents.ts'
import { type Loaded, loadScenario } from '../loadScenario.ts'
import { progress } from '../shell/progress.ts'
import { DONE, INTERRUPTED, Misuse, type Shell } from '../shell/shell.ts'
import { refused } from '../studyCommand.ts'
import { type Notebook, storyOptions, tell } from '../output/tell.ts'
import { checkOutputs } from '../output/writeTables.ts'
import { type TraceChoice, traceChoice } from '../options/traceChoice.ts'

export interface TraceFlags extends Omit<TraceChoice, 'from' | 'to'> {
  /** times in the units of scenario files */
  readonly from?: string
  readonly to?: string
  readonly replication: number
  readonly seed: string
  readonly variation?: string
  readonly json?: true
  /** folder for the tables of the stretch */
  readonly csv?: string
  readonly csvStyle?: CsvStyle
  /** file for the lines, or where its name ends in .html for the picture of the stretch */
  readonly out?: string
}

/** events that are written at once */
const BLOCK = 2000

/** Every event of one run, or those that were asked for: a table in plain words, or one JSON record a line. */
export async function trace(shell: Shell, file: string, flags: TraceFlags, command: string): Promise<number> {
  const { seed, replication, out } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line } = source.scenario
  const { from, to, ...names } = flags
  const stretch = { ...(from === undefined ? {} : { from: time('--from', from) }), ...(to === undefined ? {} : { to: time('--to', to) }) }
  const wanted = traceChoice(line, { ...names, ...stretch })
  if (flags.csv !== undefined && out !== undefined && !isPage(out))
    throw new Misuse('--csv writes the tables of the picture: with it, --out takes a name that ends in .html')
  await checkOutputs(shell, flags)
  const shown = progress(shell, `events of replication ${replication}, seed ${seed}`, 1)
  const traced = await refused(shell, () =>
    traceRun(line, { replication, ...keptStretch(line, flags, stretch) }, { seed, signal: shell.signal }),
  )
  if (traced === null) {
    shown.end(true)
    return INTERRUPTED
  }
  shown.onProgress({ done: 1, total: 1 })
  shown.end(false)
  const { trace } = traced
  if (pictured(flags)) return await picture(shell, source, trace, stretch, flags, command)
  const { head, text } = flags.json === true ? records(source, { seed, replication }) : await plainWords(source)
  const parts: string[] = []
  const write = out === undefined ? shell.out.write : (part: string) => void parts.push(part)
  write(`${head}\n`)
  let told = 0
  for (let first = 0; first < trace.kinds.length && !shell.signal.aborted; first += BLOCK) {
    const block = traceEvents(trace, line, first, Math.min(first + BLOCK, trace.kinds.length))
    const lines = block.filter(wanted).map((event) => `${text(event)}\n`)
    told += lines.length
    if (lines.length > 0) write(lines.join(''))
  }
  if (shell.signal.aborted) return INTERRUPTED
  if (out !== undefined) {
    await shell.writeFile(out, parts.join(''))
    shell.out.write(`${told} events: ${out}\n`)
  }
  if (told === 0) shell.err.write('no event is of these carriers and places in this stretch of time\n')
  return DONE
}

interface EventLines {
  readonly head: string
  readonly text: (event: TraceEvent) => string
}

const records = (source: Loaded, of: Pick<TraceFlags, 'seed' | 'replication'>): EventLines => ({
  head: JSON.stringify(traceHead(source, { engineVersion: ENGINE_VERSION, ...of })),
  text: JSON.stringify,
})

async function plainWords({ scenario }: Loaded): Promise<EventLines> {
  const { TRACE_HEAD, traceLine } = await import('@loopwright/notebook/trace')
  return { head: TRACE_HEAD, text: (event) => traceLine(titled(scenario, event)) }
}

/** What of a run is kept. A picture needs to know where each carrier was when its stretch began, and when it left. */
function keptStretch(line: LineSpec, flags: TraceFlags, { from, to }: Stretch): EventWish {
  if (!pictured(flags)) return { ...(from === undefined ? {} : { fromSeconds: from }), ...(to === undefined ? {} : { toSeconds: to }) }
  return { toSeconds: pictureStretch(line, { from, to }).toSeconds + STAY_MAX }
}

/** seconds; a carrier that stays longer after the end of a picture is told to stay to the end of the run */
const STAY_MAX = 6 * 3600

const pictured = ({ csv, out }: TraceFlags): boolean => csv !== undefined || (out !== undefined && isPage(out))

/** With the title of a stop in place of its name. */
function titled(scenario: Scenario, event: TraceEvent): TraceEvent {
  return event.place !== null && STOP_EVENTS.has(event.event) ? { ...event, place: titleOf(scenario, 'stop', event.place) } : event
}

/** seconds that the picture shows where nothing is said: readable, and a lap or more of most loops */
const STRETCH = 15 * 60

/** seconds from time 0, as far as they were said */
interface Stretch {
  readonly from?: number | undefined
  readonly to?: number | undefined
}

function pictureStretch({ window }: LineSpec, { from, to }: Stretch): { readonly fromSeconds: number; readonly toSeconds: number } {
  const fromSeconds = from ?? (to === undefined ? window.warmupSeconds : Math.max(0, to - STRETCH))
  return { fromSeconds, toSeconds: to ?? Math.min(fromSeconds + STRETCH, window.endSeconds) }
}

/** The picture of a stretch: zones over time, one line for each carrier. */
async function picture(
  shell: Shell,
  source: Loaded,
  trace: TraceColumns,
  stretch: Stretch,
  { out, csv, csvStyle, seed, replication, carrier }: TraceFlags,
  command: string,
): Promise<number> {
  const { file, scenario, notes } = source
  const { line } = scenario
  const { fromSeconds, toSeconds } = pictureStretch(line, stretch)
  if (!(toSeconds > fromSeconds))
    throw new Misuse(`the run ends at ${formatDuration(line.window.endSeconds)}: there is nothing to show from there on`)
  const stays = carrierStays(trace, line).filter((stay) => carrier === undefined || carrier.includes(`${stay.carrier}`))
  const { shiftStarts } = notes
  const tale = ({ simulatedCell }: Notebook, { tracePauses, traceStory }: typeof import('@loopwright/notebook/trace')): Tale => {
    const pauses = tracePauses(trace, scenario)
    const { question, cells } = traceStory(scenario, stays, { ...storyOptions(source), fromSeconds, toSeconds, shiftStarts, pauses })
    const simulated = { seed, replications: 1, engineVersion: ENGINE_VERSION, partial: false }
    const run = {
      ...simulatedCell('simulated', scenario, file, simulated, ''),
      sentence: `One run: replication ${replication}, seed ${seed}.`,
    }
    return { question, cells: [...cells, run] }
  }
  return await tell(
    shell,
    { ...(out === undefined ? {} : { out }), ...(csv === undefined ? {} : { csv }), ...(csvStyle === undefined ? {} : { csvStyle }) },
    { partial: false, document: null, door: () => import('@loopwright/notebook/trace'), tale, name: scenario.name, command },
  )
}

function time(option: string, text: string): number {
  const { value, fault } = parseQuantity(text.trim(), 'duration')
  if (fault !== null) throw new Misuse(`${option} "${text}": write a time with its unit, such as "90 s" or "1.2 h"`)
  return value
}
