/** A table of texts that are ready to be read: rounded, with their units in the column heads. */
export interface Table {
  /** what the table shows, one line */
  readonly caption: string
  readonly columns: readonly TableColumn[]
  readonly rows: readonly TableRow[]
  /** a line under the table; null: none */
  readonly note: string | null
}

export interface TableColumn {
  readonly head: string
  readonly align: 'left' | 'right'
  /** left out in the terminal, where 8 columns and 80 characters are all there is */
  readonly pageOnly: boolean
}

export interface TableRow {
  /** one text per column */
  readonly cells: readonly string[]
  /** the row the answer speaks of: bold, and `>` in the terminal */
  readonly marked: boolean
}
