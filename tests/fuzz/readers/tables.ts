/** Tables of the shop floor: as text and as workbooks, each through the study that is made of it. */
import { type Account, mixStudy, readOrders, readStops, readTable, readTimes, stopStudy, timeStudy } from '@loopwright/measure'
import { stationsOfCsv, weeksOfCsv } from '../../../packages/cli/src/options/countedWeeks.ts'
import { tasksOfCsv } from '../../../packages/cli/src/options/balanceTasks.ts'
import { ORDERS, STOPS } from '../../helpers/shopTables.ts'
import { plain, type Reader, takenOrRefused } from '../reader.ts'

const TIMES = [
  'task;variant;operator;seconds\nfit;basic;A;48,2\nfit;comfort;B;60,1\nwire;basic;A;0:46\nwire;comfort;B;1:10\n',
  'Task,Cycle 1,Cycle 2,Cycle 3\nPlace frame,35.1,34.8,36.0\nWire,46,45,70\n',
  'when\ttask\ttime\n2026-01-05 06:00\tfit\t0.8 min\n2026-01-05 06:01\tfit\t49 s\n',
]

/** Every row is told of. */
function lostRows({ read, refusals, rows }: Account): string | null {
  const refused = refusals.filter(({ wholeRow }) => wholeRow).length
  return read + refused === rows ? null : `${read} rows read and ${refused} refused are not the ${rows} rows of the file`
}

/** rows of a table that are studied: how long that takes is the work that was asked for, and no reader's */
const STUDIED = 100

const finite = (numbers: readonly number[]): boolean => numbers.every((number) => Number.isFinite(number) && number >= 0)

export function timesOf(bytes: Uint8Array): string | null {
  const { observations, account } = readTimes(readTable(bytes, 'times.csv'), { unit: 's' })
  if (!finite(observations.map(({ observedSeconds }) => observedSeconds))) return 'a time that is none'
  timeStudy(observations.slice(0, STUDIED), { seed: 'fuzz', samples: 99 })
  return lostRows(account)
}

export function stopsOf(bytes: Uint8Array): string | null {
  const { stops, account } = readStops(readTable(bytes, 'stops.csv'), {})
  if (!stops.every(({ start, end }) => Number.isFinite(start) && (end === null || Number.isFinite(end)))) return 'an instant that is none'
  stopStudy(stops.slice(0, STUDIED), { seed: 'fuzz' })
  return lostRows(account)
}

export function ordersOf(bytes: Uint8Array): string | null {
  const { orders, account } = readOrders(readTable(bytes, 'orders.csv'), {})
  if (!finite(orders.map(({ units }) => units))) return 'a number of units that is none'
  mixStudy(orders.slice(0, STUDIED), {})
  return lostRows(account)
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)
const tableReader = (texts: readonly string[], read: (bytes: Uint8Array) => string | null): Reader =>
  plain(texts, (text) => takenOrRefused(() => read(utf8(text))))

export const times: Reader = tableReader(TIMES, timesOf)
export const stopLog: Reader = tableReader([STOPS, STOPS.replaceAll(',', ';').replaceAll('2026-11-0', '02.11.202')], stopsOf)
export const orders: Reader = tableReader([ORDERS, 'product;number\nsmall;12\nlarge;5\n'], ordersOf)

export const weeks: Reader = plain(['week,units,shifts\nW1,3300,10\nW2,3150,10\n', 'shifts;week;units\n10;W1;60\n'], (text) =>
  takenOrRefused(() =>
    finite(weeksOfCsv(text, 'weeks.csv').flatMap(({ units, shifts }) => [units, shifts])) ? null : 'a count that is none',
  ),
)

export const stations: Reader = plain(
  ['station;seconds;n;sd\nS6;66,5;30;3\n', 'station,seconds,n,sd\nS1,12,30,2\nS2,13.5,12,1\n'],
  (text) =>
    takenOrRefused(() =>
      finite(stationsOfCsv(text, 'stations.csv').flatMap(({ seconds, n, sd }) => [seconds, n, sd])) ? null : 'a number that is none',
    ),
)

export const tasks: Reader = plain(
  ['task,seconds,after\nfit,40,\ntest,30,fit\npack,12,fit+test\n', 'Task;Time;Needs\nfit;40,5;-\n'],
  (text) => takenOrRefused(() => (finite(tasksOfCsv(text, 'tasks.csv').map(({ seconds }) => seconds)) ? null : 'a time that is none')),
)
