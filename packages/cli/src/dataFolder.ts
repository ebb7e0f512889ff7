/** A folder of data: tables of times, stops and orders by their names, read and judged. */
import { basename, join } from 'node:path'
import type { DoubtedInput, MeasuredData, OrderTable, StopLog, TimeTable } from '@loopwright/measure'
import type { TableFlags } from './options/tableOptions.ts'
import { readerOptions, readTables, refusedTable } from './readTables.ts'
import { Misuse, type Shell } from './shell/shell.ts'

/** How the tables of a folder are read and judged. */
export interface DataFlags extends Omit<TableFlags, 'sheet' | 'columns'> {
  /** share */
  readonly allowance?: number
  readonly allowanceOf?: 'work' | 'shift'
  readonly breaks?: 'calendar' | 'allowance'
  readonly keepValues?: true
  readonly from?: string
  readonly to?: string
  readonly hours?: string
}

export interface Folder {
  readonly data: MeasuredData
  readonly files: readonly (TimeTable | StopLog | OrderTable)[]
  /** names of files that no reader takes */
  readonly unused: readonly string[]
  readonly allowance: { readonly share: number; readonly of: 'work' | 'shift'; readonly breaks: 'calendar' | 'allowance' } | null
}

const KINDS = {
  times: /^(times?|time[-_ ]?study|stopwatch|zeit)/i,
  stops: /^(stops?|down|faults?|stör|stoer)/i,
  orders: /^(orders?|mix|plan|auftr)/i,
} as const
const TABLE = /\.(csv|txt|tsv|xlsx)$/i

/** @throws Misuse  where the folder has no table of a known name, or one cannot be read */
export async function dataFolder(shell: Shell, folder: string, flags: DataFlags, seed: string): Promise<Folder> {
  const names = (await shell.listFolder(folder)).filter((name) => TABLE.test(name) && !name.startsWith('.') && !name.startsWith('~'))
  const of = (kind: keyof typeof KINDS): string[] => names.filter((name) => KINDS[kind].test(name)).map((name) => join(folder, name))
  const unused = names.filter((name) => !Object.values(KINDS).some((kind) => kind.test(name)))
  if (names.length === unused.length)
    throw new Misuse(
      `"${folder}" has no table whose name begins with times, stops or orders${unused.length === 0 ? '' : `; there are ${unused.slice(0, 6).join(', ')}`}`,
    )
  const measure = await import('@loopwright/measure')
  const options = readerOptions(flags)
  const allowance = allowanceOf(flags)
  const [timeFiles, stopFiles, orderFiles] = [of('times'), of('stops'), of('orders')]
  const times = await readTables(shell, timeFiles, {}, (table) => measure.readTimes(table, options))
  const logs = await readTables(shell, stopFiles, {}, (table) => measure.readStops(table, options))
  const orders = await readTables(shell, orderFiles, {}, (table) => measure.readOrders(table, options))
  const hours = flags.hours === undefined ? null : measure.workingHours(flags.hours)
  if (hours !== null && !hours.ok) throw new Misuse(`--hours: ${hours.reason}`)
  const ends = Object.fromEntries(
    (['from', 'to'] as const).flatMap((name) => {
      const text = flags[name]
      if (text === undefined) return []
      const seconds = measure.instantOfText(text)
      if (seconds === null) throw new Misuse(`--${name} "${text}" is no day; write 2026-11-03 or 2026-11-03 06:00`)
      return [[name, seconds]]
    }),
  )
  const named = (files: readonly string[]): string => files.map((file) => basename(file)).join(', ')
  const data = await refusedTable(
    (): MeasuredData => ({
      times:
        times.length === 0
          ? null
          : {
              studies: measure.timeStudy(
                times.flatMap(({ observations }) => observations),
                { allowance, seed, keepValues: flags.keepValues === true },
              ),
              source: { file: named(timeFiles) },
            },
      stops:
        logs.length === 0
          ? null
          : {
              study: measure.stopStudy(
                logs.flatMap(({ stops }) => stops),
                { ...ends, hours: hours === null ? null : hours.value, seed },
              ),
              file: named(stopFiles),
            },
      mix: orders.length === 0 ? null : { study: measure.mixStudy(orders.flatMap((table) => table.orders)), file: named(orderFiles) },
    }),
  )
  return { data, files: [...times, ...logs, ...orders], unused, allowance }
}

/** Breaks are counted once: who gives an allowance says where they are. */
export function allowanceOf({
  allowance,
  allowanceOf: of,
  breaks,
}: Pick<DataFlags, 'allowance' | 'allowanceOf' | 'breaks'>): Folder['allowance'] {
  if (allowance === undefined) {
    if (breaks !== undefined || of !== undefined) throw new Misuse('--breaks and --allowance-of belong to --allowance, which is not given')
    return null
  }
  if (breaks === undefined)
    throw new Misuse(
      'say where breaks are counted, so that they are not counted twice: --breaks calendar (the calendar of the scenario has them, the allowance has none in it) or --breaks allowance (the allowance has them, the calendar has none)',
    )
  return { share: allowance, of: of ?? 'work', breaks }
}

/** The same data as others might have measured them, and how far each input was moved. */
export async function redrawnData(
  data: MeasuredData,
  seed: string,
  draw: number,
): Promise<{ readonly data: MeasuredData; readonly inputs: readonly DoubtedInput[]; readonly levels: readonly number[] }> {
  const { redrawMix, redrawStops, redrawTimes } = await import('@loopwright/measure')
  const times = data.times === null ? null : redrawTimes(data.times.studies, seed, draw)
  const stops = data.stops === null ? null : redrawStops(data.stops.study, seed, draw)
  const mix = data.mix === null ? null : redrawMix(data.mix.study, seed, draw)
  const all = [times, stops, mix].filter((one) => one !== null)
  return {
    data: {
      times: times === null ? null : { studies: times.study, source: { file: data.times!.source.file } },
      stops: stops === null ? null : { study: stops.study, file: data.stops!.file },
      // lists of single stretches stay what they were
      mix: mix === null ? null : { study: { ...mix.study, worst: [] }, file: data.mix!.file },
    },
    inputs: all.flatMap(({ inputs }) => inputs),
    levels: all.flatMap(({ levels }) => levels),
  }
}
