/** The hours in which a line works, for clocks that stand still outside of them. */
import type { Read } from '../values/duration.ts'

/** Stretches of each working day. */
export interface WorkingHours {
  /** seconds from midnight, ascending, not overlapping; a stretch past midnight ends beyond 86 400 */
  readonly stretches: readonly (readonly [from: number, to: number])[]
  /** 1 Monday … 7 Sunday */
  readonly days: ReadonlySet<number>
}

const DAY = 86_400
const NAMES = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']

/**
 * Working hours of a text: `06:00-14:20, 14:20-22:40`, with days in front: `Mon-Fri 06:00-14:00`. Default: every day.
 *
 * @example workingHours('Mon-Fri 06:00-14:00').value.days.has(6) // => false
 */
export function workingHours(text: string): Read<WorkingHours> {
  const match = /^\s*(?:([a-z]{3})[a-z]*\s*(?:-\s*([a-z]{3})[a-z]*)?\s+)?(.*)$/i.exec(text)!
  const [first, last] = [match[1], match[2] ?? match[1]].map((name) => (name === undefined ? -2 : NAMES.indexOf(name.toLowerCase())))
  if (first === -1 || last === -1 || (first !== -2 && last! < first!)) return no(text)
  const days = new Set(NAMES.flatMap((_, day) => (first === -2 || (day >= first! && day <= last!) ? [day + 1] : [])))
  const stretches: [number, number][] = []
  for (const part of match[3]!.split(',')) {
    const times = /^\s*(\d{1,2}):(\d{2})\s*[-–]\s*(\d{1,2}):(\d{2})\s*$/.exec(part)
    if (times === null) return no(text)
    const [a, b] = [60 * (60 * Number(times[1]) + Number(times[2])), 60 * (60 * Number(times[3]) + Number(times[4]))]
    if (a >= DAY || b > DAY || a === b) return no(text)
    stretches.push([a, b <= a ? b + DAY : b])
  }
  stretches.sort((x, y) => x[0] - y[0])
  const overlap =
    stretches.some(([from], index) => index > 0 && from < stretches[index - 1]![1]) || stretches.at(-1)![1] - DAY > stretches[0]![0]
  return overlap ? no(text) : { ok: true, value: { stretches, days } }
}

const no = (text: string): Read<never> => ({
  ok: false,
  reason: `"${text}" are no working hours; write such as "Mon-Fri 06:00-14:20, 14:20-22:40"`,
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
    if (!hours.days.has(((((day + 3) % 7) + 7) % 7) + 1)) continue
    for (const [a, b] of hours.stretches) sum += Math.max(0, Math.min(to, day * DAY + b) - Math.max(from, day * DAY + a))
  }
  return sum
}
