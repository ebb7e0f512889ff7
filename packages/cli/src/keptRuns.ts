/** Where the commands keep finished replications. */
import type { ForcedEngine } from '@loopwright/study'
import type { Store } from '@loopwright/study/machine'
import type { Shell } from './shell/shell.ts'

export const STORE_FOLDER = '.loopwright'

export interface StoreFlags {
  /** folder of the store */
  readonly store?: string
  /** no store: everything is run again, nothing is kept */
  readonly fresh?: true
  /** told of the store when it is open */
  readonly onStore?: (store: Store | null) => void
  /** one of the engines is forced: it runs everything itself */
  readonly engine?: ForcedEngine
}

export async function openStore(shell: Shell, { store, fresh, engine, onStore }: StoreFlags): Promise<Store | null> {
  const opened = fresh === true || engine !== undefined ? null : await shell.openStore(store ?? STORE_FOLDER)
  onStore?.(opened)
  return opened
}

/** Says on standard error what came from the store, and what was wrong with it; nothing where there is nothing to say. */
export function tellStore(shell: Shell, store: Store | null): void {
  if (store === null) return
  const { damaged, trouble } = store.report
  if (damaged > 0)
    shell.err.write(`store: ${damaged === 1 ? '1 damaged entry' : `${damaged} damaged entries`} dropped and computed again\n`)
  if (trouble !== null) shell.err.write(`store: ${trouble}; results are right, but not all are kept\n`)
}
