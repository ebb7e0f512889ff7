/** Luck of the work: how many seconds the tasks of a stretch of serials take more than is to be expected, the mix of products included. */
import { type LineSpec, tasksOf } from '@loopwright/line'
import { mixShares } from '@loopwright/line/bounds'
import { cumulativeShares, distributionMean, mostBehind, shareIndexAt, type Distribution } from '@loopwright/stats'
import { sumOver } from './drawLuck.ts'
import { Draws, type World } from './series.ts'
import type { Luck } from './stopLuck.ts'

/**
 * Draw k of a task belongs to the product of serial k, whichever station does it and in whatever order.
 *
 * @param stations  indices; a task that several of them share counts once, by the first one's times
 * @returns         seconds of a stretch of serials, of mean 0; null where chance does not reach them
 */
export function workLuckOf(spec: LineSpec, stations: readonly number[]): Luck | null {
  const variantOf = variants(spec)
  const shares = mixShares(spec.mix, spec.variants.length)
  const times = new Map<number, readonly (Distribution | null)[]>()
  for (const index of stations) {
    for (const { task, seconds } of tasksOf(spec.stations[index]!)) {
      if (!times.has(task)) times.set(task, seconds)
    }
  }
  const tasks = [...times].map(([task, seconds]) => ({
    stream: `task/${spec.tasks[task]!}`,
    draws: seconds.map((distribution) => (distribution === null ? null : new Draws(distribution))),
    means: seconds.map((distribution) => (distribution === null ? 0 : distributionMean(distribution))),
  }))
  const random = spec.mix.kind === 'random'
  const told = tasks
    .map((task) => ({ ...task, mean: task.means.reduce((sum, mean, variant) => sum + shares[variant]! * mean, 0) }))
    .filter(({ draws, means }) => draws.some((one) => one?.random) || (random && means.some((mean) => mean !== means[0])))
  if (told.length === 0) return null
  return (world, serials) =>
    sumOver(serials, (serial) => {
      const variant = variantOf(world, serial)
      if (variant === null) return 0
      return told.reduce((sum, { stream, draws, means, mean }) => {
        const draw = draws[variant]
        const seconds = draw?.random ? draw.at(world, stream, serial) : means[variant]!
        return sum + seconds - (random ? mean : means[variant]!)
      }, 0)
    })
}

/** The variant of a serial; null past the end of a list. */
function variants({ mix }: LineSpec): (world: World, serial: number) => number | null {
  switch (mix.kind) {
    case 'random': {
      const cumulative = cumulativeShares(mix.shares)
      const u = new Float64Array(1)
      return (world, serial) => {
        u[0] = world.uniform('mix', serial)
        return shareIndexAt(cumulative, 0, mix.shares.length, u, 0)
      }
    }
    case 'levelled': {
      const order: number[] = []
      const given = mix.shares.map(() => 0)
      const sum = mix.shares.reduce((total, share) => total + share, 0)
      return (_, serial) => {
        while (order.length <= serial) {
          const next = mostBehind(mix.shares, sum, given, order.length)
          given[next]! += 1
          order.push(next)
        }
        return order[serial]!
      }
    }
    case 'pattern':
      return (_, serial) => mix.sequence[serial % mix.sequence.length]!
    case 'list':
      return (_, serial) => mix.sequence[serial] ?? null
  }
}
