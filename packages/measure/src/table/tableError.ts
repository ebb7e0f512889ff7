/** A table that cannot be read: what, where, why, and how to mend it, all at once. */

/** One thing that is wrong with a table. */
export interface TableFault {
  /** file, and sheet where there are several */
  readonly file: string
  /** such as `line 7, column 3 ("seconds")` or `cell C7 ("seconds")`; '': the table as a whole */
  readonly place: string
  /** what was found, and why it cannot be read */
  readonly what: string
  /** what to do; '': nothing to say */
  readonly fix: string
}

/**
 * A fault as one line.
 *
 * @example faultLine({ file: 'times.csv', place: 'line 3', what: 'the quote never closes', fix: 'close it' }) // => '"times.csv", line 3: the quote never closes; close it'
 */
export function faultLine({ file, place, what, fix }: TableFault): string {
  return `"${file}"${place === '' ? '' : `, ${place}`}: ${what}${fix === '' ? '' : `; ${fix}`}`
}

/** A refusal of a whole table: `faults` says every one, `message` the same as lines. */
export class TableError extends Error {
  override readonly name = 'TableError'
  readonly faults: readonly TableFault[]

  constructor(faults: readonly TableFault[]) {
    super(faults.map(faultLine).join('\n'))
    this.faults = faults
  }
}

/** A refusal with one fault. */
export const refusal = (file: string, place: string, what: string, fix: string): TableError => new TableError([{ file, place, what, fix }])
