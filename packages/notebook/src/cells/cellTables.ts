/** The tables of cells as files: each told table one file, in full precision, and one that says what the columns are. */
import type { Table, TableField, TableValue } from '@loopwright/charts/table'
import { type Cell, oneView, type Views } from './cell.ts'

/** A table as a file. */
export interface FileTable {
  /** of the file, without its ending: the id of the cell */
  readonly name: string
  readonly columns: readonly string[]
  readonly rows: readonly (readonly TableValue[])[]
}

/**
 * One table for each cell that has one; where a choice of the page switches it, all views stand below each other and the choice is the first column.
 * The last one, `columns`, says what each column of the others is.
 *
 * @example cellTables([tableCell('tasks', tableOf({ caption: 'Tasks', columns: [wordColumn('Task', 'task', 'its name', (name) => name)], rows: ['wiring'] }))])[0].name // => 'tasks'
 */
export function cellTables(cells: readonly Cell[]): FileTable[] {
  const found = cells.flatMap((cell): Found[] => {
    switch (cell.kind) {
      case 'table':
        return [{ name: cell.id, views: cell.views }]
      case 'chart':
      case 'plan':
        return [{ name: cell.id, views: tablesOf(cell.views) }]
      case 'data':
        return [{ name: cell.id, views: oneView(cell.table) }]
      default:
        return []
    }
  })
  const told = found.map(fileTable).filter(({ table }) => table.rows.length > 0)
  return [...told.map(({ table }) => table), columnTable(told)]
}

interface Found {
  readonly name: string
  readonly views: Views<Table>
}

interface Made {
  readonly table: FileTable
  readonly fields: readonly TableField[]
}

function tablesOf(views: Extract<Cell, { kind: 'chart' | 'plan' }>['views']): Views<Table> {
  return { ...views, of: views.of.map(({ key, content }) => ({ key, content: content.table })) }
}

function fileTable({ name, views }: Found): Made {
  const fieldsOf = (table: Table): readonly TableField[] => table.columns.flatMap(({ fields }) => fields)
  // views may differ in their columns, as when a state occurs with one count only
  const fields = [...new Map(views.of.flatMap(({ content }) => fieldsOf(content)).map((field) => [field.name, field])).values()]
  const own = fields.some((field) => field.name === views.choice)
  const choice = views.choice === null || own ? null : views.choice
  const rows = views.of.flatMap(({ key, content }) => {
    const places = fields.map((field) => fieldsOf(content).findIndex((each) => each.name === field.name))
    return content.rows.map(({ values }): TableValue[] => [
      ...(choice === null ? [] : [keyValue(key)]),
      ...places.map((place) => (place < 0 ? null : values[place]!)),
    ])
  })
  const all = choice === null ? fields : [{ name: choice, says: 'the choice that the row belongs to' }, ...fields]
  return { table: { name, columns: all.map((field) => field.name), rows }, fields: all }
}

const keyValue = (key: string): TableValue => (/^\d+$/.test(key) ? Number(key) : key)

function columnTable(made: readonly Made[]): FileTable {
  return {
    name: 'columns',
    columns: ['file', 'column', 'says'],
    rows: made.flatMap(({ table, fields }) => fields.map(({ name, says }) => [table.name, name, says])),
  }
}
