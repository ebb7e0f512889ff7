/** Luck of a safety stop: how many seconds its resets take more than is to be expected, over a fixed number of moves. */
import type { StationSpec } from '@loopwright/line'
import { meanUpTo } from '@loopwright/stats'
import { Draws } from './series.ts'
import type { Luck } from './stopLuck.ts'

/**
 * @param longestSeconds  a reset counts up to this
 * @returns               of a stretch of moves, whole numbers; null where chance does not reach it
 */
export function safetyLuckOf({ name, safetyStop }: StationSpec, longestSeconds: number): Luck | null {
  if (safetyStop === null || !(safetyStop.probability > 0)) return null
  const { probability, resetSeconds } = safetyStop
  const resets = new Draws(resetSeconds)
  const mean = resets.random ? meanUpTo(resetSeconds, longestSeconds) : 0
  return (world, { from, to }) => {
    let luck = 0
    let stops = 0
    for (let move = 0; move < to; move++) {
      // two uniforms a move: whether somebody is in the way, and when
      const strikes = world.uniform(`safety/${name}`, 2 * move) < probability
      const counts = move >= from
      const reset = strikes || !resets.random ? Math.min(longestSeconds, resets.at(world, `reset/${name}`, stops)) : 0
      const expected = resets.random ? mean : reset
      if (counts) luck += (strikes ? reset : 0) - probability * expected
      if (strikes) stops++
    }
    return luck
  }
}
