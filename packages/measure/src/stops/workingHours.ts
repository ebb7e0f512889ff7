/** The hours in which a line works, for clocks that stand still outside of them. */
import type { Read } from '../values/duration.ts'

/** Seconds from midnight; a stretch past midnight ends beyond 86 400. */
type Stretch = readonly [from: number, to: number]

/** Stretches of each day of the week. */
export interface WorkingHours {
  /** by day, Monday first, length 7; ascending, not overlapping; none where the line stands still all day */
  readonly days: readonly (readonly Stretch[])[]
}

const DAY = 86_400
const NAMES = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']
const PART = /^\s*(?:([a-z]{3})[a-z]*\s*(?:[-–]\s*([a-z]{3})[a-z]*)?\s+)?(\d{1,2}):(\d{2})\s*[-–]\s*(\d{1,2}):(\d{2})\s*$/i

/**
 * Working hours of a text: `06:00-14:20, 14:20-22:40`, with days in front: `Mon-Thu 06:00-22:00, Fri 06:00-14:00`.
 * Days hold for the stretches behind them, until others come. Default: every day.
 *
 * @example workingHours('Mon-Fri 06:00-14:00').value.days[5] // => []
 */
export function workingHours(text: string): Read<WorkingHours> {
  const days: Stretch[][] = NAMES.map(() => [])
  let [first, last] = [0, NAMES.length - 1]
  let named = true
  for (const [index, part] of text.split(/[,;]/).entries()) {
    const match = PART.exec(part)
    if (match === null) return no(text)
    if (index === 0) named = match[1] !== undefined
    if (match[1] !== undefined) {
      // days behind stretches of every day would leave open whose those were
      if (!named) return no(text)
      ;[first, last] = [match[1], match[2] ?? match[1]].map((name) => NAMES.indexOf(name.toLowerCase())) as [number, number]
      if (first < 0 || last < first) return no(text)
    }
    const [a, b] = [60 * (60 * Number(match[3]) + Number(match[4])), 60 * (60 * Number(match[5]) + Number(match[6]))]
    if (a >= DAY || b > DAY || a === b) return no(text)
    for (const day of days.slice(first, last + 1)) day.push([a, b <= a ? b + DAY : b])
  }
  for (const day of days) day.sort((x, y) => x[0] - y[0])
  return days.some((day, index) => overlaps(day, days[(index + 6) % 7]!)) ? no(text) : { ok: true, value: { days } }
}

/** Stretches of a day lie over each other, or over what the day before leaves. */
function overlaps(day: readonly Stretch[], before: readonly Stretch[]): boolean {
  const over = before.length === 0 ? 0 : before.at(-1)![1] - DAY
  return day.some(([from], index) => from < (index === 0 ? over : day[index - 1]![1]))
}

const no = (text: string): Read<never> => ({
  ok: false,
  reason: `"${text}" are no working hours; write such as "06:00-14:20, 14:20-22:40" or "Mon-Thu 06:00-22:00, Fri 06:00-14:00"`,
})

/**
 * Working seconds between two instants of the wall clock.
 *
 * @param hours  null: the clock never stands still
 * @example workedBetween(0, 86_400, null) // => 86400
 */
export function workedBetween(from: number, to: number, hours: WorkingHours | null): number {
  if (to <= from) return 0
  if (hours === null) return to - from
  let sum = 0
  // a stretch may have begun the day before
  for (let day = Math.floor(from / DAY) - 1; day * DAY < to; day++) {
    // 1970-01-01 was a Thursday
    for (const [a, b] of hours.days[(((day + 3) % 7) + 7) % 7]!)
      sum += Math.max(0, Math.min(to, day * DAY + b) - Math.max(from, day * DAY + a))
  }
  return sum
}
