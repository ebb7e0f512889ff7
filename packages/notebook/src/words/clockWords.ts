/** Instants of a run on the clock of the day, as a calendar gives them. */
import type { ShiftStart } from '@loopwright/scenario'

const DAY = 86_400
const SECONDS = 1e-6

/**
 * An instant of the run as hour and minute of the day; with seconds where it is not on a full minute. Null without a calendar.
 *
 * @param starts   of the run's shifts, in order
 * @param seconds  from time 0
 * @param ends     where a shift ends as the next begins: the hour of the end. Default: of the beginning
 * @example clockText([{ seconds: 0, clockSeconds: 21_600 }], 7200) // => '08:00'
 */
export function clockText(starts: readonly ShiftStart[], seconds: number, ends = false): string | null {
  const start = starts.findLast((one) => (ends ? one.seconds < seconds - SECONDS : one.seconds <= seconds + SECONDS)) ?? starts[0]
  if (start === undefined) return null
  const clock = Math.round(start.clockSeconds + seconds - start.seconds) % DAY
  const two = (part: number): string => String(part).padStart(2, '0')
  const minutes = `${two(Math.floor(clock / 3600))}:${two(Math.floor(clock / 60) % 60)}`
  return clock % 60 === 0 ? minutes : `${minutes}:${two(clock % 60)}`
}
