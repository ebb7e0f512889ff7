/** How long a product, or a carrier, is worked on at a station. */
import { distributionMean } from '@loopwright/stats'
import type { StationSpec } from '../spec.ts'
import { tasksOf } from '../stationTasks.ts'

/**
 * Mean working time of one stay at a station, over the variants that have a task there; release not included.
 *
 * @param weights  how often each variant is made
 * @returns        seconds, to twelve digits, so that the rounding of the sum does not show; 0 where nobody has a task
 * @example meanStay(line.stations[1], [1]) // => 20
 */
export function meanStay(station: Pick<StationSpec, 'unload' | 'load' | 'work'>, weights: readonly number[]): number {
  const tasks = tasksOf(station)
  let time = 0
  let visits = 0
  weights.forEach((weight, variant) => {
    const own = tasks.map((task) => task.seconds[variant] ?? null).filter((seconds) => seconds !== null)
    if (weight === 0 || (own.length === 0 && station.load === null && station.unload === null)) return
    visits += weight
    time += weight * own.reduce((sum, seconds) => sum + distributionMean(seconds), 0)
  })
  return visits === 0 ? 0 : Number((time / visits).toPrecision(12))
}

/**
 * Mean seconds of the longest stay at one of several stations, its release included; 0 where there is no station.
 *
 * @param weights  how often each variant is made
 * @example longestStay(line.stations, [1]) // => 21
 */
export function longestStay(stations: readonly StationSpec[], weights: readonly number[]): number {
  return Math.max(0, ...stations.map((station) => meanStay(station, weights) + distributionMean(station.releaseSeconds)))
}
