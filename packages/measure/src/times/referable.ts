/** Whether a scenario may take its times from the table itself. */
import type { Columns } from '../table/heads.ts'
import type { RawTable } from '../table/rawTable.ts'
import type { TimeUnit } from '../values/duration.ts'
import type { Observation, TimeColumn, TimeTable } from './observation.ts'

/** A scenario reads plain columns of CSV files by itself: bare numbers in one unit, every row of them. */
export function referable(
  table: RawTable,
  form: TimeTable['form'],
  { at, heads, headRows, bodyFrom }: Columns,
  unit: TimeUnit | null,
  observations: readonly Observation[],
  decimal: string | undefined,
): TimeColumn | null {
  const time = at.get('time')
  const task = at.get('task')
  if (
    table.spreadsheet ||
    table.separator === '|' ||
    form !== 'long' ||
    time === undefined ||
    task === undefined ||
    headRows !== 1 ||
    bodyFrom !== 1
  )
    return null
  if (unit === null || unit === 'cmin' || unit === 'd' || at.has('rating') || decimal !== undefined) return null
  const sign = table.separator === ',' ? /^\d+(\.\d+)?$/ : /^\d+([.,]\d+)?$/
  const lines = new Set(observations.map(({ line }) => line))
  const all = table.rows.slice(bodyFrom).every((row) => lines.has(row.line) && sign.test(row.cells[time]?.text ?? ''))
  const variant = at.get('variant')
  return all
    ? { time: heads[time]!.text, task: heads[task]!.text, variant: variant === undefined ? null : heads[variant]!.text, unit }
    : null
}
