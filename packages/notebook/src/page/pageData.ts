/** What the page's script needs: the views of every cell that is drawn or switched. Lies in the page as packed JSON. */
import type { Table } from '@loopwright/charts/table'
import type { Cell, ChartCell, LiveCell, Views } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import type { LiveCurve } from '../live/liveInput.ts'

export interface PageData {
  /** by cell id, in the order of the page */
  readonly figures: Readonly<Record<string, ViewsData<Figure>>>
  readonly tables: Readonly<Record<string, ViewsData<Table>>>
  /** what may be changed, and how the study that the page tells was made; null: nothing */
  readonly live: LiveData | null
}

export interface LiveData extends Pick<LiveCell, 'source' | 'inputs'> {
  readonly seed: string
  /** the curve that is drawn anew with each change, and the cell that it stands in; null: the page has none */
  readonly curve: (LiveCurve & { readonly cell: string }) | null
}

export interface ViewsData<T> {
  readonly choice: string | null
  readonly shown: string
  readonly views: Readonly<Record<string, T>>
}

export function pageData(cells: readonly Cell[]): PageData {
  return {
    figures: Object.fromEntries(
      cells.flatMap((cell) =>
        (cell.kind === 'chart' || cell.kind === 'plan') && isDrawn(cell.views) ? [[cell.id, viewsData(cell.views, slim)]] : [],
      ),
    ),
    live: liveData(cells),
    tables: Object.fromEntries(
      cells.flatMap((cell) => (cell.kind === 'table' && cell.views.choice !== null ? [[cell.id, viewsData(cell.views, shownTable)]] : [])),
    ),
  }
}

function liveData(cells: readonly Cell[]): LiveData | null {
  const live = cells.find((cell) => cell.kind === 'live')
  const simulated = cells.find((cell) => cell.kind === 'run' || cell.kind === 'sweep')
  if (live === undefined) return null
  const drawn = cells.find((cell) => cell.kind === 'chart' && cell.curve !== undefined) as ChartCell | undefined
  const curve = drawn === undefined ? null : { ...drawn.curve!, cell: drawn.id }
  return { source: live.source, inputs: live.inputs, seed: simulated?.provenance.seed ?? '1', curve }
}

/** A picture that stands in the page and is never switched needs no script. */
function isDrawn({ choice, of }: Views<Figure>): boolean {
  return choice !== null || of.some(({ content }) => content.picture.kind === 'chart')
}

function viewsData<T>(views: Views<T>, pack: (content: T) => T): ViewsData<T> {
  return { choice: views.choice, shown: views.shown, views: Object.fromEntries(views.of.map(({ key, content }) => [key, pack(content)])) }
}

function slim(figure: Figure): Figure {
  return { ...figure, table: shownTable(figure.table) }
}

/** What a page shows of a table: its texts. */
function shownTable(table: Table): Table {
  return {
    ...table,
    columns: table.columns.map((column) => ({ ...column, fields: [] })),
    rows: table.rows.map((row) => ({ ...row, values: [] })),
  }
}
