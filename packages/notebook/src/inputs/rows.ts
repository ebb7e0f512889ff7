import type { Table } from '@loopwright/charts'

/** A table of two columns, what and how much: the plainest form of a list of inputs. */
export function listTable(caption: string, rows: readonly (readonly [string, string])[]): Table {
  return {
    caption,
    columns: [
      { head: 'Input', align: 'left', pageOnly: false },
      { head: 'Value', align: 'left', pageOnly: false },
    ],
    rows: rows.map((cells) => ({ cells, marked: false })),
    note: null,
  }
}

/** A table of texts; the first column and those named are words, the others numbers. */
export function textTable(
  caption: string,
  heads: readonly string[],
  words: readonly string[],
  rows: readonly (readonly string[])[],
  note: string | null,
): Table {
  return {
    caption,
    columns: heads.map((head, index) => ({ head, align: index === 0 || words.includes(head) ? 'left' : 'right', pageOnly: false })),
    rows: rows.map((cells) => ({ cells, marked: false })),
    note,
  }
}
