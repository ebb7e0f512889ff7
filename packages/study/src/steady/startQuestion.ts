import type { WindowSpec } from '@loopwright/line'

/**
 * What a run is asked: a stretch that starts empty, one that starts from the state that the shift before left, or production that goes on and on.
 */
export type StartQuestion = 'shift from empty' | 'shift from yesterday' | 'steady state'

/**
 * Which of the three questions the window of a line asks.
 *
 * Without a warm-up the filling of the line is part of the answer. With one, a calendar says that the cut is a shift that was worked; without a calendar it is
 * there to forget the start.
 *
 * @param shifts  the window comes from a shift calendar
 * @example startQuestion({ warmupSeconds: 28800, endSeconds: 57600 }, true) // => 'shift from yesterday'
 */
export function startQuestion({ warmupSeconds }: WindowSpec, shifts: boolean): StartQuestion {
  if (warmupSeconds === 0) return 'shift from empty'
  return shifts ? 'shift from yesterday' : 'steady state'
}
