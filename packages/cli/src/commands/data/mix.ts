import { basename } from 'node:path'
import { mixDocument } from '../../documents/data/mixDocument.ts'
import type { TableFlags } from '../../options/tableOptions.ts'
import { type OutputFlags, tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { readerOptions, readTables } from '../../readTables.ts'
import { DONE, Misuse, type Shell } from '../../shell/shell.ts'

export interface MixFlags extends OutputFlags, Omit<TableFlags, 'unit' | 'clock'> {
  readonly work?: Readonly<Record<string, number>>
  readonly round: number
  readonly write?: string
}

/** Judges orders or a plan: shares, options, the levelled order, the heaviest stretches; and writes the products of a scenario. Runs nothing. */
export async function mix(shell: Shell, files: readonly string[], flags: MixFlags, command: string): Promise<number> {
  await checkOutputs(shell, flags)
  if (flags.write !== undefined) await shell.checkWritable(flags.write)
  const { mixPartsText, mixStudy, readOrders } = await import('@loopwright/measure')
  const tables = await readTables(shell, files, flags, (table) => readOrders(table, readerOptions(flags)))
  const orders = tables.flatMap((table) => table.orders)
  const unknown = Object.keys(flags.work ?? {}).find((name) => !orders.some(({ product }) => product === name))
  const missing = flags.work === undefined ? undefined : orders.find(({ product }) => flags.work![product] === undefined)?.product
  if (unknown !== undefined)
    throw new Misuse(`--work: no order is of "${unknown}"; there are ${[...new Set(orders.map(({ product }) => product))].join(', ')}`)
  if (missing !== undefined) throw new Misuse(`--work: the work of "${missing}" is missing`)
  const study = mixStudy(orders, { round: flags.round, ...(flags.work === undefined ? {} : { work: flags.work }) })
  const code = await tell(shell, flags, {
    partial: false,
    document: () => mixDocument(tables, study),
    door: () => import('@loopwright/notebook/data'),
    tale: (_, { mixStory }) => mixStory(tables, study, flags.work !== undefined),
    name: files.map((file) => basename(file)).join(', '),
    command,
  })
  if (code !== DONE || flags.write === undefined) return code
  await shell.writeFile(
    flags.write,
    mixPartsText(study, files.map((file) => basename(file)).join(', '), [`Ordered products, by: ${command}`]),
  )
  shell.err.write(`Products: ${flags.write}\n`)
  return code
}
