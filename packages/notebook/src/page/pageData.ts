/** What the page's script needs: the views of every cell that is drawn or switched. Lies in the page as packed JSON. */
import type { ChartRow } from '@loopwright/charts'
import type { Table } from '@loopwright/charts/table'
import type { Cell, Views } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'

export interface PageData {
  /** by cell id, in the order of the page */
  readonly figures: Readonly<Record<string, ViewsData<Figure>>>
  readonly tables: Readonly<Record<string, ViewsData<Table>>>
}

export interface ViewsData<T> {
  readonly choice: string | null
  readonly shown: string
  readonly views: Readonly<Record<string, T>>
}

export function pageData(cells: readonly Cell[]): PageData {
  return {
    figures: Object.fromEntries(
      cells.flatMap((cell) => (cell.kind === 'chart' || cell.kind === 'plan' ? [[cell.id, viewsData(cell.views, slim)]] : [])),
    ),
    tables: Object.fromEntries(
      cells.flatMap((cell) => (cell.kind === 'table' && cell.views.choice !== null ? [[cell.id, viewsData(cell.views, shownTable)]] : [])),
    ),
  }
}

function viewsData<T>(views: Views<T>, pack: (content: T) => T): ViewsData<T> {
  return { choice: views.choice, shown: views.shown, views: Object.fromEntries(views.of.map(({ key, content }) => [key, pack(content)])) }
}

/** A chart's rows stand beside its specification and in it: once is enough. `withRows` puts them back. */
function slim(figure: Figure): Figure {
  const { picture } = figure
  const shown = { ...figure, table: shownTable(figure.table) }
  return picture.kind === 'chart' ? { ...shown, picture: { ...picture, spec: { ...picture.spec, data: { name: 'table' } } } } : shown
}

/** What a page shows of a table: its texts. */
function shownTable(table: Table): Table {
  return {
    ...table,
    columns: table.columns.map((column) => ({ ...column, fields: [] })),
    rows: table.rows.map((row) => ({ ...row, values: [] })),
  }
}

/** The specification with its rows in place. */
export function withRows(picture: { readonly spec: object; readonly rows: readonly ChartRow[] }): object {
  return { ...picture.spec, data: { name: 'table', values: picture.rows.map((row) => ({ ...row })) } }
}
