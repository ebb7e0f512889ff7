/** What the page is told of settings that were simulated: plain data, so that it can come from a worker. */
import type { Table } from '@loopwright/charts/table'
import type { AnswerFigure } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import type { LiveValues } from './liveChanges.ts'

/** A setting of the reader: what it is called, and what is changed. */
export interface LiveSetting {
  readonly name: string
  readonly values: LiveValues
}

export interface LiveAsk {
  /** rising: what is told of an older one is no longer wanted */
  readonly id: number
  /** one or two; beside the file */
  readonly settings: readonly LiveSetting[]
}

/** A figure of the last setting beside that of the file. */
export interface LiveFigure extends AnswerFigure {
  /** of the file; '' where it is the same */
  readonly was: string
  /** of the mean: how much more than the file, over the same windows, with its interval; '' */
  readonly more: string
}

export interface LiveLine {
  readonly name: string
  /** per replication */
  readonly units: readonly number[]
  readonly gridlocks: number
}

/** What a setting makes, as far as it is simulated. */
export type ToldSetting = Extract<LiveTold, { kind: 'told' }>

export type LiveTold =
  | {
      readonly kind: 'told'
      readonly id: number
      /** there will be no more about this setting */
      readonly last: boolean
      readonly replications: number
      /** what is simulated, such as "320 shifts" */
      readonly simulated: string
      /** number of carriers of the last setting */
      readonly carriers: number
      readonly figures: readonly LiveFigure[]
      readonly sentences: readonly string[]
      /** a standstill, what the scenario is warned of: a title, then sentences */
      readonly warnings: readonly { readonly title: string; readonly text: string }[]
      readonly table: Table
      readonly sure: readonly string[]
      /** what each setting changes, in words, in the order of the settings */
      readonly changes: readonly (readonly string[])[]
      /** types the same numbers; null: the file is one with a variation put in */
      readonly command: string | null
      /** the file first */
      readonly lines: readonly LiveLine[]
    }
  /** the curve of the last setting beside that of the file */
  | {
      readonly kind: 'curve'
      readonly id: number
      /** that it is drawn in */
      readonly cell: string
      /** null: that of the file holds, as nothing but the number of carriers is changed */
      readonly figure: Figure | null
      /** number of carriers of the setting */
      readonly carriers: number
      /** how far it is, such as "20 shifts of each count"; '' */
      readonly simulated: string
    }
  /** a value that is impossible, as the command tells it */
  | { readonly kind: 'refused'; readonly id: number; readonly key: string | null; readonly text: string }

/** What was kept: a variation in words and as a file takes it. */
export interface LiveKept {
  readonly kind: 'kept'
  readonly words: readonly string[]
  /** the variation alone */
  readonly yaml: string
  /** the scenario file with it */
  readonly file: string
  readonly fileName: string
  readonly command: string
}
