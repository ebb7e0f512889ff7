/** Sums that stand among times without a word: at the end of a column, or as a column of their own. */

interface Value {
  readonly row: number
  readonly column: number
  readonly value: number | null
}

/** fewer cannot be told from chance */
const TERMS_MIN = 3

/**
 * Cells whose value is the sum or the mean of all those above them in the same column, in the last row of it; and columns that are the sum of the others.
 *
 * @param form    in a long table the values are one column
 * @returns       reason by `row/column`
 */
export function withoutSums(form: 'long' | 'cycles' | 'tasks', values: readonly Value[]): Map<string, string> {
  const found = new Map<string, string>()
  const byColumn = grouped(values, ({ column }) => column)
  const columns = [...byColumn.keys()]
  const lastRow = values.reduce((most, { row, value }) => (value === null ? most : Math.max(most, row)), -1)
  for (const [column, all] of byColumn) {
    const mine = all.filter(({ value }) => value !== null)
    const last = mine.at(-1)
    const above = mine.slice(0, -1)
    if (last === undefined || above.length < TERMS_MIN || last.row !== lastRow) continue
    const sum = above.reduce((all, { value }) => all + value!, 0)
    if (equal(last.value!, sum)) found.set(`${last.row}/${column}`, 'it is the sum of the times above it')
    else if (form !== 'long' && columns.length > 1) continue
    else if (equal(last.value!, sum / above.length) && !Number.isInteger(last.value! * 10))
      found.set(`${last.row}/${column}`, 'it is the mean of the times above it')
  }
  if (form === 'long' || columns.length < TERMS_MIN) return found
  const last = columns.at(-1)!
  const byRow = grouped(values, ({ row }) => row)
  const rows = [...byRow.keys()]
  const sums = [...byRow.values()].flatMap((mine) => {
    const own = mine.find(({ column }) => column === last)?.value ?? null
    const others = mine.filter(({ column, value }) => column !== last && value !== null)
    return own === null || others.length < 2
      ? []
      : [
          equal(
            own,
            others.reduce((all, { value }) => all + value!, 0),
          ),
        ]
  })
  if (sums.length >= TERMS_MIN && sums.every((is) => is))
    for (const row of rows) found.set(`${row}/${last}`, 'its column is the sum of the others')
  return found
}

function grouped(values: readonly Value[], key: (value: Value) => number): Map<number, Value[]> {
  const groups = new Map<number, Value[]>()
  for (const value of values) {
    const group = groups.get(key(value))
    if (group === undefined) groups.set(key(value), [value])
    else group.push(value)
  }
  return groups
}

const equal = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(b))
