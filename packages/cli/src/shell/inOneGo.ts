/**
 * Work that takes long in one go. Node hears of Ctrl-C between pieces of work only; a script may be ended in the middle, so such work is called by one.
 * Only Ctrl-C does it: other signals wait for the end of the work. In the instant in which Node changes what hears of it, it ends the process by itself; one that has come in the
 * microseconds before, after the loop has looked for signals, is lost with what heard of it, so that it has to be given again.
 */
import { setImmediate } from 'node:timers/promises'
import { createContext, Script } from 'node:vm'
import { Stopped } from './shell.ts'

/**
 * What does such work, once a Ctrl-C that has come already has been heard: it would be lost else.
 *
 * @param onStop  told of a Ctrl-C; true: it is only the echo of an earlier one, and the work is done all the same
 */
export function breakable(onStop: () => boolean): <T>(what: string, work: () => T) => Promise<T> {
  const context = createContext({ work: null })
  const script = new Script('work()')
  const once = (work: () => unknown): { readonly done: boolean; readonly result: unknown } => {
    context.work = work
    try {
      return { done: true, result: script.runInContext(context, { breakOnSigint: true, displayErrors: false }) }
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ERR_SCRIPT_EXECUTION_INTERRUPTED') throw error
      return { done: false, result: null }
    } finally {
      context.work = null
    }
  }
  return async <T>(what: string, work: () => T): Promise<T> => {
    // the first may come before the loop has looked for signals, the second comes after it
    await setImmediate()
    await setImmediate()
    for (;;) {
      const { done, result } = once(work)
      if (done) return result as T
      if (!onStop()) throw new Stopped(`stopped while ${what}`)
    }
  }
}
