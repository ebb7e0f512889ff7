import { basename } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import type { Observation, TaskTimes } from '@loopwright/measure'
import { allowanceOf } from '../../dataFolder.ts'
import { timesDocument } from '../../documents/data/timesDocument.ts'
import type { TableFlags } from '../../options/tableOptions.ts'
import { type OutputFlags, tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { readerOptions, readTables, refusedTable } from '../../readTables.ts'
import { countdown } from '../../shell/countdown.ts'
import { DONE, INTERRUPTED, type Shell } from '../../shell/shell.ts'

export interface TimesFlags extends OutputFlags, TableFlags {
  readonly task?: string
  /** share */
  readonly rating?: number
  /** share */
  readonly allowance?: number
  readonly allowanceOf?: 'work' | 'shift'
  readonly breaks?: 'calendar' | 'allowance'
  readonly shortest?: Readonly<Record<string, number>>
  readonly keepValues?: true
  /** per cent */
  readonly within: number
  readonly seed: string
  readonly write?: string
}

/** Judges measured times: how long each task takes, how surely, what looks odd; and writes the tasks of a scenario. Runs nothing. */
export async function times(shell: Shell, files: readonly string[], flags: TimesFlags, command: string): Promise<number> {
  await checkOutputs(shell, flags)
  if (flags.write !== undefined) await shell.checkWritable(flags.write)
  const allowance = allowanceOf(flags)
  const { readTimes, timeParts, timePartsText, timeStudy } = await import('@loopwright/measure')
  const options = { ...readerOptions(flags), ...(flags.task === undefined ? {} : { task: flags.task }) }
  const tables = await readTables(shell, files, flags, (table) => readTimes(table, options))
  const observations = tables.flatMap((table) => table.observations)
  const relative = flags.within / 100
  const request = {
    allowance,
    relative,
    seed: flags.seed,
    ...(flags.rating === undefined ? {} : { rating: flags.rating }),
    ...(flags.shortest === undefined ? {} : { shortest: flags.shortest }),
    keepValues: flags.keepValues === true,
  }
  const studies = await refusedTable(() => judged(shell, observations, (group) => timeStudy(group, request)))
  if (studies === null) return INTERRUPTED
  const code = await tell(shell, flags, {
    partial: false,
    document: () => timesDocument(tables, studies),
    door: () => import('@loopwright/notebook/data'),
    tale: (_, { timesStory }) =>
      timesStory(tables, studies, {
        relative,
        allowance,
        ...(flags.rating === undefined ? {} : { rating: flags.rating }),
      }),
    name: files.map((file) => basename(file)).join(', '),
    command,
  })
  if (code !== DONE || flags.write === undefined) return code
  const [only] = tables
  const source = {
    file: files.map((file) => basename(file)).join(', '),
    column: tables.length === 1 && allowance === null && flags.rating === undefined ? only!.column : null,
  }
  await shell.writeFile(
    flags.write,
    timePartsText(timeParts(studies, source), [`Measured times, by: ${command}`, 'To be put under load, unload or work of the stations.']),
  )
  shell.err.write(`Tasks: ${flags.write}\n`)
  return code
}

/** Task by task, so that it can be stopped; null: it was. */
async function judged(
  shell: Shell,
  observations: readonly Observation[],
  study: (group: readonly Observation[]) => readonly TaskTimes[],
): Promise<TaskTimes[] | null> {
  const { byTask } = await import('@loopwright/measure')
  const groups = byTask(observations)
  const told = countdown(shell, 'curves for the times', groups.length)
  const found: TaskTimes[] = []
  for (const [index, group] of groups.entries()) {
    await setImmediate()
    if (shell.signal.aborted) {
      told.end()
      shell.err.write('stopped: nothing was judged\n')
      return null
    }
    told.at(index)
    found.push(...study(group))
  }
  told.end()
  return found
}
