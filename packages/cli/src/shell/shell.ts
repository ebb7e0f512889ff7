import type { LoadedNotebook } from '@loopwright/notebook/machine'
import type { Worker } from 'node:worker_threads'
import type { Pool, Store } from '@loopwright/study/machine'

/** All that the command does to the world outside. `nodeShell` is the real one; tests of single functions bring a small one. */
export interface Shell {
  /** results */
  readonly out: Stream
  /** progress, warnings, errors */
  readonly err: Stream
  /** A file's text; of `<stdin>` what comes in by standard input. */
  readonly readFile: (path: string) => Promise<string>
  /** The same in bytes. Refuses a file that is larger than a table of people may be, before it is read. */
  readonly readBytes: (path: string) => Promise<Uint8Array>
  /** Names of the files in a folder, in order; folders in it are left out. */
  readonly listFolder: (path: string) => Promise<readonly string[]>
  /** The text of a file that a scenario or a decision names; null where there is none. The path is from the folder of what names it. */
  readonly readBeside: (namedIn: string, path: string) => string | null
  /** Makes folders as needed; nobody meets half a file. */
  readonly writeFile: (path: string, content: string | Uint8Array) => Promise<void>
  /** Throws a `Failure` if the file could not be written, a `Misuse` where the name is no file's; leaves nothing behind but the folder. */
  readonly checkWritable: (path: string) => Promise<void>
  /** A notebook's module, from any folder; TypeScript too. */
  readonly loadNotebook: (path: string) => Promise<LoadedNotebook>
  /** Where an editor finds the types of these packages that looks from a folder; null: by their names. */
  readonly typesFor: (folder: string) => TypesPlace | null
  /** A thread in which notebooks are carried out while they are written. */
  readonly startNotebookThread: (options: NotebookThreadOptions) => Worker
  /** The store in a folder, made with its first entry. */
  readonly openStore: (folder: string) => Promise<Store>
  /** Why no page can be printed here; null: one can. */
  readonly cannotPrint: () => string | null
  /** A page as PDF. Throws a `Failure` where it cannot be printed. */
  readonly printPdf: (html: string) => Promise<Uint8Array>
  /** Opens a page, by its file or by its address, in the browser that the system prefers; false: nothing here can. */
  readonly openPage: (path: string) => Promise<boolean>
  /** Threads that are there already, for studies that are given none; they are left running. Default: each study starts its own. */
  readonly pool?: Pool
  /** milliseconds since some fixed instant */
  readonly now: () => number
  readonly today: () => Date
  /** A value of the environment; undefined where there is none. */
  readonly environment: (name: string) => string | undefined
  /** aborted by Ctrl-C */
  readonly signal: AbortSignal
  /**
   * Does what may take long in one go; Ctrl-C ends it in the middle, by `Stopped`. It may be begun anew, so all it does is compute or begin.
   *
   * @param what  ends the sentence `stopped while …`
   */
  readonly inOneGo: <T>(what: string, work: () => T) => Promise<T>
}

/** The packages that run, as an editor may look for them. */
export interface TypesPlace {
  /** whole path, with a star for the name of the package */
  readonly pattern: string
  /** they are source, not built */
  readonly source: boolean
}

/** What such a thread needs to know; plain data. */
export interface NotebookThreadOptions {
  /** threads of its studies; null: all cores */
  readonly workers: number | null
  /** folder of the store; null: none */
  readonly store: string | null
}

export interface Stream {
  /** Control characters are shown by their numbers, but for line ends, tabs and the styles that are our own. */
  readonly write: (text: string) => void
  readonly isTerminal: boolean
  /** bold and colours may be used */
  readonly colour: boolean
  /** that a line may take; 60 … 120, and 80 where it is no terminal */
  readonly columns: number
}

/** How the command ends. */
export const DONE = 0
export const FAILED = 1
export const MISUSE = 2
export const INTERRUPTED = 130

/** What the user asked for cannot be meant: said in one or more lines, without a stack. */
export class Misuse extends Error {
  override readonly name = 'Misuse'
}

/** It was asked rightly and could not be done: a disk that is full, a file that may not be written. */
export class Failure extends Error {
  override readonly name = 'Failure'
}

/** Ctrl-C came before there was anything to tell; the sentence says where. */
export class Stopped extends Error {
  override readonly name = 'Stopped'
}

/**
 * Does what nothing comes of after a Ctrl-C: then it is not even begun.
 *
 * @throws Stopped
 */
export async function unlessStopped<T>(shell: Pick<Shell, 'inOneGo' | 'signal'>, what: string, work: () => T): Promise<T> {
  return await shell.inOneGo(what, () => {
    if (shell.signal.aborted) throw new Stopped(`stopped while ${what}`)
    return work()
  })
}

/** Does what may be refused because of what the user asked: the refusal becomes a `Misuse`. */
export function refusals<T>(make: () => T): T {
  try {
    return make()
  } catch (error) {
    throw asMisuse(error)
  }
}

/** The refusal of what the user asked as a `Misuse`; any other error as it is. */
export function asMisuse(error: unknown): unknown {
  const isRefusal = error instanceof RangeError || (error instanceof Error && error.name === 'StatisticsError')
  return isRefusal ? new Misuse(error.message) : error
}
