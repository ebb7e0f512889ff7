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
  /** left out where 8 columns and 80 characters are all there is */
  readonly pageOnly: boolean
}

export interface TableRow {
  /** one text per column */
  readonly cells: readonly string[]
  /** the row that the answer speaks of */
  readonly marked: boolean
}

/**
 * A column of numbers, to the right, or of words, to the left.
 *
 * @example column('Carriers', 'right').pageOnly // => false
 */
export function column(head: string, align: 'left' | 'right', pageOnly = false): TableColumn {
  return { head, align, pageOnly }
}

/**
 * A row that the answer does not speak of, or with `marked` does.
 *
 * @example row(['10', '330 ± 1'], true).marked // => true
 */
export function row(cells: readonly string[], marked = false): TableRow {
  return { cells, marked }
}
