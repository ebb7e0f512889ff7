import { formatNumber, visibleLine } from '@loopwright/charts/table'
import { engineMark, keptIn, mergeStores, pruneStore } from '@loopwright/study/machine'
import { STORE_FOLDER } from '../keptRuns.ts'
import { DONE, Failure, MISUSE, Misuse, type Shell } from '../shell/shell.ts'

export interface StoreInfoFlags {
  readonly store?: string
}

export interface StorePruneFlags extends StoreInfoFlags {
  /** days */
  readonly olderThan?: number
  readonly all?: true
}

const DAY_MS = 86_400_000

/** Says what a store holds. */
export async function storeInfo(shell: Shell, { store: folder = STORE_FOLDER }: StoreInfoFlags): Promise<number> {
  const kept = keptIn(folder)
  if (kept.length === 0) shell.out.write(`Nothing is kept in ${folder}.\n`)
  for (const { mark, current, replications, entries, bytes } of kept) {
    const of = current ? 'this engine' : 'another engine, of no use to this one'
    shell.out.write(`${mark} (${of}): ${formatNumber(replications, 0)} replications in ${formatNumber(entries, 0)} files, ${size(bytes)}\n`)
  }
  return DONE
}

/** Removes from a store what no run can use, and what is too old. */
export async function storePrune(shell: Shell, { store: folder = STORE_FOLDER, olderThan, all }: StorePruneFlags): Promise<number> {
  if (all === true && olderThan !== undefined) throw new Misuse('--all removes everything; leave out --older-than')
  const before = olderThan === undefined ? null : shell.today().getTime() - olderThan * DAY_MS
  const { files, bytes, left } = pruneStore(folder, { nowMs: shell.today().getTime(), beforeMs: before, all: all === true })
  shell.out.write(files === 0 ? `Nothing to remove in ${folder}.\n` : `Removed ${formatNumber(files, 0)} files, ${size(bytes)}.\n`)
  if (left > 0) shell.err.write(`${formatNumber(left, 0)} files of no use could not be removed: you may not write there\n`)
  return DONE
}

/** Puts stores together. */
export async function storeMerge(
  shell: Shell,
  folders: readonly string[],
  { store: into = STORE_FOLDER }: StoreInfoFlags,
): Promise<number> {
  const { replications, entries, damaged, others, empty, trouble } = mergeStores(folders, into)
  shell.out.write(`${formatNumber(replications, 0)} replications in ${formatNumber(entries, 0)} files are in ${into}.\n`)
  for (const { mark, replications: left } of others)
    shell.err.write(`${formatNumber(left, 0)} replications of another engine (${mark}) are left out: this one is ${engineMark()}\n`)
  if (damaged > 0) shell.err.write(`${formatNumber(damaged, 0)} damaged files are left out; their runs will be run again\n`)
  for (const folder of empty) shell.err.write(`there is no store in "${visibleLine(folder)}"\n`)
  if (trouble !== null) throw new Failure(trouble)
  return empty.length === folders.length ? MISUSE : DONE
}

const size = (bytes: number): string =>
  bytes < 1e6 ? `${formatNumber(Math.ceil(bytes / 1000), 0)} kB` : `${formatNumber(bytes / 1e6, 1)} MB`
