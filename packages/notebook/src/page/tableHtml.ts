import type { Table } from '@loopwright/charts/table'
import { escapeHtml } from './html.ts'

/** rows; a table of so many is not cut by the end of a sheet */
const SHORT_ROWS = 6

/** letters of a text that would make a high stack of words beside other columns */
const LONG_TEXT = 30
/** columns; fewer share a narrow screen among them */
const MANY_COLUMNS = 4

/**
 * A table in a container of its own. Where it has to scroll sideways the page's script makes it a stop of the keyboard; elsewhere it is none.
 * It is called by a line above it, which stays in sight while the table scrolls. The page is written with it, and the page's script draws the table of another view with it: both look the same.
 */
export function tableHtml(table: Table): string {
  const head = table.columns
    .map(({ head: text, align }) => {
      const numeric = align === 'right' ? ' class="number"' : ''
      return text.trim() === '' ? `<td${numeric}></td>` : `<th scope="col"${numeric}>${headHtml(text)}</th>`
    })
    .join('')
  const body = table.rows
    .map((row) => {
      const cells = row.cells.map((text, index) => {
        const numeric = table.columns[index]?.align === 'right' ? ' class="number"' : ''
        if (index === 0) return `<th scope="row"${numeric}>${escapeHtml(text)}</th>`
        const long = numeric === '' && longText(table, index) ? ' class="long"' : ''
        return `<td${numeric}${long}>${escapeHtml(text)}</td>`
      })
      return `<tr${row.marked ? ' class="marked"' : ''}>${cells.join('')}</tr>`
    })
    .join('\n')
  const note = table.note === null ? '' : `<p class="note">${escapeHtml(table.note)}</p>`
  const caption = escapeHtml(table.caption)
  return `<p class="caption" aria-hidden="true">${caption}</p>
<div class="scroll"><table${table.rows.length <= SHORT_ROWS ? ' class="short"' : ''}><caption class="hidden">${caption}</caption><thead><tr>${head}</tr></thead><tbody>
${body}
</tbody></table></div>${note}`
}

/** Scrolled sideways it is read more easily than down a stack of single words. */
function longText({ columns, rows }: Table, column: number): boolean {
  return columns.length >= MANY_COLUMNS && rows.some(({ cells }) => cells[column]!.length > LONG_TEXT)
}

/** A word that a narrow terminal breaks is whole where there is room. */
function headHtml(head: string): string {
  return escapeHtml(head).replaceAll('-\n', '&shy;').replaceAll('\n', '<br>')
}
