/** What stands between the words of a command and the command itself: threads, and the page that is opened. */
import { type PageFlags, withPage } from './shell/openedPage.ts'
import { isShared, type MachineFlags } from './machineFlags.ts'
import type { Shell } from './shell/shell.ts'

export interface ProgramContext {
  readonly shell: Shell
  /** as it was typed */
  readonly command: string
  readonly onCode: (code: number) => void
}

/** Runs a command that may write a page. */
export async function paged({ shell, onCode }: ProgramContext, flags: PageFlags, run: () => Promise<number>): Promise<void> {
  onCode(await withPage(shell, flags, run))
}

/**
 * The same with threads that are started before anything else is loaded, where there will be enough runs and the shell has none.
 *
 * @param runs  at least
 */
export async function threaded<F extends MachineFlags & PageFlags>(
  context: ProgramContext,
  flags: F,
  runs: number,
  run: (flags: F) => Promise<number>,
): Promise<void> {
  await paged(context, flags, async () => {
    const { fewEnough, withThreads } = await import('./threads.ts')
    const few = fewEnough(context.shell, flags)
    if (isShared(few)) return await (await import('./machines.ts')).withMachines(context.shell, few, run)
    const there = context.shell.pool !== undefined && few.workers === undefined
    return there ? await run(few) : await withThreads(few, runs, run)
  })
}
