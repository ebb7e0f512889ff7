import type { Pool, Store } from '@loopwright/study/machine'
import type { Places } from '../load/thrownFault.ts'

/** All that the runner does to the world outside; the caller brings it. Paths are those of the caller's working folder. */
export interface Effects {
  readonly readFile: (path: string) => Promise<string>
  /** Text of a file that a scenario or a decision names, by its path from that file; null: there is none. Default: such files cannot be opened. */
  readonly readBeside?: (namedIn: string, path: string) => string | null
  /** Makes folders as needed; writes to a temporary name beside it and renames, so that nobody meets half a file. */
  readonly writeFile: (path: string, text: string) => Promise<void>
  /** The module's exports; the caller knows how to load TypeScript. */
  readonly importModule: (path: string) => Promise<unknown>
  /** Where in the notebook's own text something was thrown; default: nobody knows. */
  readonly places?: Places
  /** One text to the terminal, with a line end added. */
  readonly log: (text: string) => void
  /** What is being done, one line; replaces the line before. */
  readonly progress: (line: string) => void
  readonly now: () => Date
  /** Threads that are there already, here or elsewhere; they are left running. Default: each study starts its own. */
  readonly pool?: Pool
  /** The result of a study that was made of the very same before; default: each is made. */
  readonly recall?: <R extends { readonly partial: boolean }>(name: string, made: readonly unknown[], make: () => Promise<R>) => Promise<R>
  /** Where finished replications are kept; default: nowhere. */
  readonly store?: Store | null
  /** Aborted: the results so far are told, marked as partial. */
  readonly signal: AbortSignal
  /** Does what may take long in one go, so that it can be stopped in the middle; `what` ends the sentence `stopped while …`. Default: it ends by itself. */
  readonly inOneGo?: <T>(what: string, work: () => T) => Promise<T>
}
