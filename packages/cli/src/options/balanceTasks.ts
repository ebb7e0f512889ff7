/** Tasks to share among stations, from a table of a CSV file or from the stations of a scenario. */
import type { LineSpec } from '@loopwright/line'
import { lineTasks, type TaskToShare } from '@loopwright/study/change'
import { nearest, readCsv } from '@loopwright/scenario'
import { Misuse } from '../shell/shell.ts'

/** Headings under which people keep such tables; compared without blanks, signs and capitals. */
const HEADINGS = {
  task: ['task', 'taskname', 'name', 'operation', 'element', 'workelement', 'activity', 'step', 'description'],
  time: [
    'seconds',
    's',
    'sec',
    'secs',
    'time',
    'times',
    'timesec',
    'duration',
    'durations',
    'tasktime',
    'tasktimes',
    'worktime',
    'meantime',
  ],
  after: ['after', 'predecessor', 'predecessors', 'precededby', 'immediatepredecessor', 'immediatepredecessors', 'needs'],
} as const

/** tables of tasks are shorter */
const TASKS_MAX = 2000
/** unknown names for which a near one is looked for */
const NEAR_MAX = 20

/** a time in minutes would be sixty times too short */
const MINUTES = /(^|[^a-z])(min|mins|minutes|h|hours)([^a-z]|$)/i

/**
 * A table of tasks: columns `task`, `seconds` and, where there is an order, `after`, under these or other usual headings. What comes before is separated by
 * `+`, `,`, `;`, `|` or, where no task has a blank in its name, by blanks.
 *
 * @throws Misuse  with the lines of what cannot be read, all at once
 */
export function tasksOfCsv(text: string, file: string): TaskToShare[] {
  const { columns, rows, decimalComma } = readCsv(text)
  const plain = columns.map((name) => name.toLowerCase().replaceAll(/[^a-z]/g, ''))
  const column = (which: keyof typeof HEADINGS): number => plain.findIndex((name) => (HEADINGS[which] as readonly string[]).includes(name))
  const [task, time, after] = [column('task'), column('time'), column('after')]
  const found = columns.map((name) => `"${name.trim()}"`).join(', ')
  const inMinutes = columns.find((name) => MINUTES.test(name))
  if (time < 0 && inMinutes !== undefined)
    throw new Misuse(`"${file}": the column "${inMinutes.trim()}" is not in seconds; write the times in seconds under the heading seconds`)
  if (task < 0 || time < 0)
    throw new Misuse(
      `"${file}": the first line must name the columns task, seconds and, if there is an order, after; it names ${found === '' ? 'nothing' : found}`,
    )
  if (rows.length === 0) throw new Misuse(`"${file}": no task stands below the line of headings; give each task a line of its own`)
  if (rows.length > TASKS_MAX) throw new Misuse(`"${file}" has ${rows.length} rows; tables of up to ${TASKS_MAX} tasks are shared`)
  const faults: string[] = []
  const names = rows.map(({ cells }) => (cells[task] ?? '').trim())
  const known = new Set(names)
  const first = new Map(names.map((name, index) => [name, index] as const).reverse())
  let unknowns = 0
  const tasks = rows.map(({ cells, line }, index) => {
    const name = names[index]!
    const written = (cells[time] ?? '').trim()
    const seconds = Number((decimalComma ? written.replace(',', '.') : written).replace(/(?:s|sec|seconds)$/i, ''))
    if (name === '') faults.push(`line ${line}: the task has no name`)
    if (first.get(name)! < index) faults.push(`line ${line}: "${name}" is named twice; give each task a name of its own`)
    if (written === '' || !(seconds > 0 && seconds < Infinity)) faults.push(`line ${line}: "${written}" is no time above 0 seconds`)
    const before = after < 0 ? [] : predecessors(cells[after] ?? '', known)
    for (const unknown of before.filter((each) => !known.has(each))) {
      unknowns += 1
      const near = unknowns > NEAR_MAX ? null : nearest(unknown, known)
      faults.push(`line ${line}: there is no task "${unknown}" to come after${near === null ? '' : `; did you mean "${near}"?`}`)
    }
    return { name, seconds, after: before }
  })
  if (faults.length > 0) throw new Misuse(faults.map((fault) => `"${file}", ${fault}`).join('\n'))
  return tasks
}

/** The tasks that a cell names: as a whole, else by its separators, else by blanks; `-` stands for none. */
function predecessors(cell: string, names: ReadonlySet<string>): string[] {
  const whole = cell.trim()
  if (whole === '' || names.has(whole)) return whole === '' ? [] : [whole]
  if (/^[-–—]$/.test(whole)) return []
  const parts = whole
    .split(/[+,;|]/)
    .map((name) => name.trim())
    .filter((name) => name !== '')
  return parts.flatMap((part) => {
    if (names.has(part)) return [part]
    const words = part.split(/\s+/)
    return words.every((word) => names.has(word)) ? words : [part]
  })
}

/**
 * The work of a scenario's stations, each task after the one before it on the loop, or by rules.
 *
 * @param rules  such as "wire<test"; none: today's order
 * @throws Misuse  with a rule that names no task; where no station has work
 */
export function tasksOfLine(line: LineSpec, rules: readonly string[], file: string): TaskToShare[] {
  const tasks = lineTasks(line)
  if (tasks.length === 0)
    throw new Misuse(`"${file}", stations: no station has work, and work is what is shared; give them tasks, such as work: { fit: 30 s }`)
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
