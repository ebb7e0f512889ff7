/** A table: texts that are ready to be read, rounded, with their units in the column heads; and behind them the numbers in full precision. */
export interface Table {
  /** what the table shows, one line */
  readonly caption: string
  readonly columns: readonly TableColumn[]
  readonly rows: readonly TableRow[]
  /** a line under the table; null: none */
  readonly note: string | null
}

/** A column of a table: its head, its unit, its fields. */
export interface TableColumn {
  readonly head: string
  readonly align: 'left' | 'right'
  /** left out where 8 columns and 80 characters are all there is */
  readonly pageOnly: boolean
  /** on a terminal that is wide enough, the numbers in `bars` of the rows are drawn beside the texts. Default: false */
  readonly bar?: boolean
  /** what stands behind the texts of this column; none: they repeat what another column holds */
  readonly fields: readonly TableField[]
}

/** A column of the file that is made of the table. */
export interface TableField {
  /** snake_case; a unit ends it: `units_mean`, `lap_s` */
  readonly name: string
  /** what it is, its unit, and what an empty cell means */
  readonly says: string
}

/** A row of a table: texts, and the values behind them. */
export interface TableRow {
  /** one text per column */
  readonly cells: readonly string[]
  /** one value per field, over all columns; SI units, shares 0 … 1, full precision; null: not known */
  readonly values: readonly TableValue[]
  /** the row that the answer speaks of */
  readonly marked: boolean
  /** one per column: the length of its bar, to the scale of the longest of its column; null: none. Columns without `bar` need none */
  readonly bars?: readonly (number | null)[]
  /** what a terminal may show by colour: the plan met (good) or missed (bad), a standstill (bad); the texts say it too. Default: nothing */
  readonly tone?: 'good' | 'bad' | 'warning'
}

/** A value of a field: a number in full precision, a word, or nothing known. */
export type TableValue = string | number | boolean | null

/** A column, told for each row. */
export interface ColumnOf<R> {
  readonly head: string
  /** default: right, as numbers stand */
  readonly align?: 'left' | 'right'
  /** default: false */
  readonly pageOnly?: boolean
  readonly text: (row: R, index: number) => string
  readonly data: readonly FieldOf<R>[]
  /** length of a bar that a wide terminal draws beside the text, to the scale of the longest; null: none. Default: no bars */
  readonly bar?: (row: R, index: number) => number | null
}

/** Name, what it is, and its value for a row. */
export type FieldOf<R> = readonly [name: string, says: string, value: (row: R, index: number) => TableValue]

/** What a table is made of. */
export interface TableParts<R> {
  readonly caption: string
  readonly columns: readonly ColumnOf<R>[]
  readonly rows: readonly R[]
  /** default: none */
  readonly note?: string | null
  /** the row that the answer speaks of. Default: none */
  readonly marked?: (row: R, index: number) => boolean
  /** what a terminal may show by colour; the texts say it too. Default: nothing */
  readonly tone?: (row: R, index: number) => TableRow['tone']
}

/**
 * A table whose texts and numbers come from the same rows.
 *
 * @throws RangeError  if two fields have one name: their columns could not be told apart in a file
 * @example tableOf({ caption: 'Runs', columns: [{ head: 'Units', text: (n) => n.toFixed(0), data: [['units', 'units made', (n) => n]] }], rows: [330.4] }).rows[0] // => { cells: ['330'], values: [330.4], marked: false }
 */
export function tableOf<R>({ caption, columns, rows, note = null, marked = () => false, tone }: TableParts<R>): Table {
  const fields = columns.flatMap(({ data }) => data)
  const twice = fields.find(([name], index) => fields.findIndex(([other]) => other === name) < index)
  if (twice !== undefined) throw new RangeError(`two columns of the table "${caption}" are called ${twice[0]}`)
  return {
    caption,
    columns: columns.map(({ head, align = 'right', pageOnly = false, data, bar }) => ({
      head,
      align,
      pageOnly,
      ...(bar === undefined ? {} : { bar: true }),
      fields: data.map(([name, says]) => ({ name, says })),
    })),
    rows: rows.map((row, index) => {
      const toned = tone?.(row, index)
      return {
        cells: columns.map(({ text }) => text(row, index)),
        values: fields.map(([, , value]) => value(row, index)),
        marked: marked(row, index),
        ...(columns.some(({ bar }) => bar !== undefined) ? { bars: columns.map(({ bar }) => bar?.(row, index) ?? null) } : {}),
        ...(toned === undefined ? {} : { tone: toned }),
      }
    }),
    note,
  }
}

/**
 * A column that files alone show: its field's name is its head, and its value its text.
 *
 * @example dataColumn('units', 'units made', (units) => units).head // => 'units'
 */
export function dataColumn<R>(...field: FieldOf<R>): ColumnOf<R> {
  const [name, , value] = field
  return { head: name, text: (row, index) => `${value(row, index)}`, data: [field] }
}

/**
 * A column of words.
 *
 * @example wordColumn('Station', 'station', 'name of the station', (name) => name).align // => 'left'
 */
export function wordColumn<R>(head: string, name: string, says: string, text: (row: R, index: number) => string): ColumnOf<R> {
  return { head, align: 'left', text, data: [[name, says, text]] }
}
