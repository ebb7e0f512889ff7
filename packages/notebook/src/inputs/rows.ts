import { type ColumnOf, fieldName, type Table, tableOf } from '@loopwright/charts/table'

/** A table of two columns, what and how much: the plainest form of a list of inputs. */
export function listTable(caption: string, rows: readonly (readonly [string, string])[]): Table {
  return textTable(caption, ['Input', 'Value'], ['Value'], rows, null)
}

/** A table of texts; the first column and those named are words, the others numbers. Inputs are written as exactly as they were given. */
export function textTable(
  caption: string,
  heads: readonly string[],
  words: readonly string[],
  rows: readonly (readonly string[])[],
  note: string | null,
): Table {
  const names = heads.map((head, index) => fieldName(head) || `column_${index + 1}`)
  const columns = heads.map((head, index): ColumnOf<readonly string[]> => {
    const name = names.indexOf(names[index]!) < index ? `${names[index]}_${index + 1}` : names[index]!
    const text = (cells: readonly string[]): string => cells[index] ?? ''
    return { head, align: index === 0 || words.includes(head) ? 'left' : 'right', text, data: [[name, head.replaceAll('\n', ' '), text]] }
  })
  return tableOf({ caption, columns, rows, note })
}
