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
async function paged({ shell, onCode }: ProgramContext, flags: PageFlags, run: () => Promise<number>): Promise<void> {
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

/** A command as its own file has it; of one file or several. */
type Command<S, F> = (shell: Shell, of: S, flags: F, command: string) => Promise<number>

/**
 * The action of a command that simulates.
 *
 * @param load   imports it when it is needed
 * @param lines  that it runs at least, each with the replications asked for
 */
export const simulating =
  <S, F extends MachineFlags & PageFlags & { readonly replications: number }>(
    context: ProgramContext,
    load: () => Promise<Command<S, F>>,
    lines = 1,
  ): ((of: S, flags: F) => Promise<void>) =>
  async (of, flags) =>
    await threaded(context, flags, lines * flags.replications, async (all) => (await load())(context.shell, of, all, context.command))

/** The action of a command that reads and tells, and may write a page. */
export const telling =
  <S, F extends PageFlags>(context: ProgramContext, load: () => Promise<Command<S, F>>): ((of: S, flags: F) => Promise<void>) =>
  async (of, flags) =>
    await paged(context, flags, async () => (await load())(context.shell, of, flags, context.command))
