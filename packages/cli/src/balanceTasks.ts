/** Tasks to share among stations, from a table of a CSV file or from the stations of a scenario. */
import type { LineSpec } from '@loopwright/line'
import { readCsv } from '@loopwright/scenario'
import { lineTasks, type TaskToShare } from '@loopwright/study'
import { Misuse } from './shell.ts'

/**
 * Columns `task`, `seconds` and, where there is an order, `after` (names separated by blanks or `+`).
 *
 * @throws Misuse  with the line of what cannot be read
 */
export function tasksOfCsv(text: string, file: string): TaskToShare[] {
  const { columns, rows, decimalComma } = readCsv(text)
  const column = (name: string): number => columns.findIndex((each) => each.trim().toLowerCase() === name)
  const [task, seconds, after] = [column('task'), column('seconds'), column('after')]
  if (task < 0 || seconds < 0)
    throw new Misuse(`"${file}": the first line must name the columns task, seconds and, if there is an order, after`)
  return rows.map(({ cells, line }) => {
    const written = (cells[seconds] ?? '').trim()
    const value = Number(decimalComma ? written.replace(',', '.') : written)
    if (written === '' || !(value > 0 && value < Infinity))
      throw new Misuse(`"${file}", line ${line}: "${written}" is no time above 0 seconds`)
    const before = after < 0 ? '' : (cells[after] ?? '')
    return { name: (cells[task] ?? '').trim(), seconds: value, after: before.split(/[\s+]+/).filter((name) => name !== '') }
  })
}

/**
 * The work of a scenario's stations, each task after the one before it on the loop, or by rules.
 *
 * @param rules  such as "wire<test"; none: today's order
 * @throws Misuse  with a rule that names no task
 */
export function tasksOfLine(line: LineSpec, rules: readonly string[]): TaskToShare[] {
  const tasks = lineTasks(line)
  if (rules.length === 0) return tasks
  const pairs = rules.flatMap((rule) => {
    const names = rule.split('<').map((name) => name.trim())
    if (names.length < 2) throw new Misuse(`--before "${rule}": write what comes first on the left, such as "wire<test"`)
    return names.slice(1).map((second, place) => [names[place]!, second] as const)
  })
  const unknown = pairs.flat().find((name) => !tasks.some((task) => task.name === name))
  if (unknown !== undefined) throw new Misuse(`there is no task "${unknown}"; there are ${tasks.map(({ name }) => name).join(', ')}`)
  return tasks.map((task) => ({ ...task, after: pairs.filter(([, second]) => second === task.name).map(([first]) => first) }))
}
