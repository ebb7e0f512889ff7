import { basename } from 'node:path'
import { stoplogDocument } from '../../documents/data/stoplogDocument.ts'
import type { TableFlags } from '../../options/tableOptions.ts'
import { type OutputFlags, tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { readerOptions, readTables, refusedTable } from '../../readTables.ts'
import { DONE, Misuse, type Shell } from '../../shell/shell.ts'

export interface StoplogFlags extends OutputFlags, TableFlags {
  readonly from?: string
  readonly to?: string
  readonly hours?: string
  readonly runsOn?: 'operating' | 'calendar'
  /** seconds */
  readonly shortBelow: number
  readonly byPlace?: true
  readonly seed: string
  readonly write?: string
}

/** Judges a stop log: how often what stands, for how long; and writes the stops of a scenario. Runs nothing. */
export async function stoplog(shell: Shell, files: readonly string[], flags: StoplogFlags, command: string): Promise<number> {
  await checkOutputs(shell, flags)
  if (flags.write !== undefined) await shell.checkWritable(flags.write)
  const { partsText, readStops, stopParts, stopStudy, workingHours } = await import('@loopwright/measure')
  const hours = flags.hours === undefined ? null : workingHours(flags.hours)
  if (hours !== null && !hours.ok) throw new Misuse(`--hours: ${hours.reason}`)
  const [from, to] = [await instantOf('--from', flags.from), await instantOf('--to', flags.to)]
  if (from !== undefined && to !== undefined && to <= from) throw new Misuse('--to lies before --from')
  const logs = await readTables(shell, files, flags, (table) => readStops(table, readerOptions(flags)))
  const request = {
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    hours: hours === null ? null : hours.value,
    clock: flags.runsOn ?? 'operating',
    shortBelow: flags.shortBelow,
    by: flags.byPlace === true ? ('place' as const) : ('place and cause' as const),
    seed: flags.seed,
  }
  const study = await refusedTable(() =>
    stopStudy(
      logs.flatMap(({ stops }) => stops),
      request,
    ),
  )
  if (study.times.length === 0) throw new Misuse('no stop of the log lies between --from and --to')
  const code = await tell(shell, flags, {
    partial: false,
    document: () => stoplogDocument(logs, study),
    door: () => import('@loopwright/notebook/data'),
    tale: (_, { stopLogStory }) => stopLogStory(logs, study),
    name: files.map((file) => basename(file)).join(', '),
    command,
  })
  if (code !== DONE || flags.write === undefined) return code
  const parts = stopParts(study, files.map((file) => basename(file)).join(', '))
  await shell.writeFile(
    flags.write,
    partsText('stops', parts, [
      `Logged stops, by: ${command}`,
      'Each place must be one of the scenario: a station, a zone, a transfer, a section or line.',
    ]),
  )
  shell.err.write(`Stops: ${flags.write}\n`)
  return code
}

async function instantOf(option: string, text: string | undefined): Promise<number | undefined> {
  if (text === undefined) return undefined
  const { instantOfText } = await import('@loopwright/measure')
  const seconds = instantOfText(text)
  if (seconds === null) throw new Misuse(`${option} "${text}" is no day; write 2026-11-03 or 2026-11-03 06:00`)
  return seconds
}
