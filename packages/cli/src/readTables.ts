/** Tables of the shop floor, read from files; what cannot be read is told in full. */
import type { RawTable } from '@loopwright/measure'
import type { TableFlags } from './options/tableOptions.ts'
import { Misuse, type Shell } from './shell/shell.ts'

/**
 * Does what may be refused because of a table: the refusal becomes a `Misuse`.
 *
 * @throws Misuse  with every fault, each with its place and remedy
 */
export async function refusedTable<T>(make: () => Promise<T> | T): Promise<T> {
  try {
    return await make()
  } catch (error) {
    if (error instanceof Error && (error.name === 'TableError' || error.name === 'StatisticsError')) throw new Misuse(error.message)
    throw error
  }
}

/** The tables of files, in their order; all that is wrong with any of them at once. */
export async function readTables<T>(
  shell: Shell,
  files: readonly string[],
  { sheet }: TableFlags,
  read: (table: RawTable) => T,
): Promise<T[]> {
  const { readTable } = await import('@loopwright/measure')
  const found: T[] = []
  const faults: string[] = []
  for (const file of files) {
    const bytes = await shell.readBytes(file)
    try {
      found.push(read(readTable(bytes, file, sheet === undefined ? {} : { sheet })))
    } catch (error) {
      if (!(error instanceof Error && error.name === 'TableError')) throw error
      faults.push(error.message)
    }
  }
  if (faults.length > 0) throw new Misuse(faults.join('\n'))
  return found
}

/** What the readers of tables take of the flags. */
export function readerOptions({ columns, unit, decimal, clock, dates }: TableFlags) {
  return {
    ...(columns === undefined ? {} : { columns }),
    ...(unit === undefined ? {} : { unit }),
    ...(decimal === undefined ? {} : { decimal }),
    ...(clock === undefined ? {} : { clock }),
    ...(dates === undefined ? {} : { days: dates === 'dmy' ? ('day first' as const) : ('month first' as const) }),
  }
}
