import { formatDuration, formatMinutes } from '@loopwright/charts'
import { parseQuantity } from '@loopwright/scenario'
import { carrierStays, ENGINE_VERSION, type TraceColumns, tracedRun } from '@loopwright/study'
import { traceHead } from '../documents/traceDocument.ts'
import { traceEvents } from '../documents/traceEvents.ts'
import { type Loaded, loadScenario } from '../loadScenario.ts'
import { progress } from '../progress.ts'
import { DONE, INTERRUPTED, Misuse, type Shell } from '../shell.ts'
import { type TraceChoice, traceChoice } from '../traceChoice.ts'
import { TRACE_HEAD, traceLine } from '../words/traceWords.ts'

export interface TraceFlags extends Omit<TraceChoice, 'from' | 'to'> {
  /** times in the units of scenario files */
  readonly from?: string
  readonly to?: string
  readonly replication: number
  readonly seed: string
  readonly variation?: string
  readonly json?: true
  /** file for the lines */
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
  if (out !== undefined) await shell.checkWritable(out)
  const told = progress(shell, `events of replication ${replication}, seed ${seed}`, 1)
  const traced = await tracedRun(line, { seed, replication, signal: shell.signal })
  if (traced === null) {
    told.end(true)
    return INTERRUPTED
  }
  told.onProgress({ done: 1, total: 1 })
  told.end(false)
  const events = traceEvents(traced.trace, line).filter(wanted)
  const head = flags.json === true ? JSON.stringify(traceHead(source, { engineVersion: ENGINE_VERSION, seed, replication })) : TRACE_HEAD
  const text = flags.json === true ? JSON.stringify : traceLine
  if (out?.toLowerCase().endsWith('.html')) return await page(shell, source, traced.trace, stretch, { ...flags, out, command })
  const parts: string[] = []
  const write = out === undefined ? shell.out.write : (part: string) => void parts.push(part)
  write(`${head}\n`)
  for (let first = 0; first < events.length && !shell.signal.aborted; first += BLOCK) {
    const block = events.slice(first, first + BLOCK).map((event) => `${text(event)}\n`)
    write(block.join(''))
  }
  if (shell.signal.aborted) return INTERRUPTED
  if (out !== undefined) {
    await shell.writeFile(out, parts.join(''))
    shell.out.write(`${events.length} events: ${out}\n`)
  }
  if (events.length === 0) shell.err.write('no event is of these carriers and places in this stretch of time\n')
  return DONE
}

/** seconds that the picture shows where nothing is said: readable, and a lap or more of most loops */
const STRETCH = 15 * 60

/** The picture of a stretch: zones over time, one line for each carrier. */
async function page(
  shell: Shell,
  source: Loaded,
  trace: TraceColumns,
  { from, to }: { readonly from?: number; readonly to?: number },
  {
    out,
    seed,
    replication,
    carrier,
    command,
  }: { out: string; seed: string; replication: number; carrier?: readonly string[]; command: string },
): Promise<number> {
  const { line } = source.scenario
  const fromSeconds = from ?? (to === undefined ? line.window.warmupSeconds : Math.max(0, to - STRETCH))
  const toSeconds = to ?? Math.min(fromSeconds + STRETCH, line.window.endSeconds)
  if (!(toSeconds > fromSeconds))
    throw new Misuse(`the run ends at ${formatDuration(line.window.endSeconds)}: there is nothing to show from there on`)
  const [{ chartCell, studyShown }, { timeline }, { writeCells }] = await Promise.all([
    import('../studyCells.ts'),
    import('@loopwright/charts'),
    import('../cells.ts'),
  ])
  const stays = carrierStays(trace, line).filter((stay) => carrier === undefined || carrier.includes(`${stay.carrier}`))
  const figure = timeline(stays, { zones: line.zones.map(({ name }) => name), fromSeconds, toSeconds })
  const { page: cells } = studyShown(
    {
      sentences: [figure.finding],
      sure: ['One run is one shift that may happen, not a forecast.'],
      parts: [chartCell('timeline', { ...figure, finding: 'Zones over time, one line for each carrier.' })],
      warnings: [],
    },
    { source, sentence: `Replication ${replication} simulated, seed ${seed}.`, seed, replications: 1, partial: false },
  )
  const question = `What happened on the line from ${formatMinutes(fromSeconds)} to ${formatMinutes(toSeconds)} min?`
  await writeCells(shell, out, source, cells, { command, question })
  shell.out.write(`${figure.finding}\n\nPage: ${out}\n`)
  return DONE
}

function time(option: string, text: string): number {
  const { value, fault } = parseQuantity(text.trim(), 'duration')
  if (fault !== null) throw new Misuse(`${option} "${text}": write a time with its unit, such as "90 s" or "1.2 h"`)
  return value
}
