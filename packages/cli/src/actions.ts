/** What stands between the words of a command and the command itself: threads, and the page that is opened. */
import { type PageFlags, withPage } from './shell/openedPage.ts'
import type { Shell } from './shell/shell.ts'
import type { ThreadFlags } from './threads.ts'

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
 * The same with threads that are started before anything else is loaded, where there will be enough runs.
 *
 * @param runs  at least
 */
export async function threaded<F extends ThreadFlags & PageFlags>(
  context: ProgramContext,
  flags: F,
  runs: number,
  run: (flags: F) => Promise<number>,
): Promise<void> {
  await paged(context, flags, async () => {
    const { fewEnough, withThreads } = await import('./threads.ts')
    return await withThreads(fewEnough(context.shell, flags), runs, run)
  })
}
