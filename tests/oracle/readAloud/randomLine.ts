/** Lines made up at random, valid and varied: whole features off or on, times with and without ties. */

import {
  type BreakdownPart,
  type BreakdownSpec,
  type BreakSpec,
  type CarriersSpec,
  type LineSpec,
  type MixSpec,
  type PathSpec,
  PLAIN_LINE,
  PLAIN_PATH,
  PLAIN_ZONE,
  type Position,
  wholeLine,
  type ZoneSpec,
} from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import * as fc from 'fast-check'
import { type Choices, choicesFrom, someDistribution, someTime, type TimeStyle } from './choices.ts'
import { onGrid } from './grid.ts'
import { randomStations } from './randomStations.ts'

/** A valid LineSpec; the same seed of fast-check gives the same lines. There is no shrinking: see smaller.ts. */
export function randomLine(): fc.Arbitrary<LineSpec> {
  return fc.noBias(fc.noShrink(fc.nat({ max: 2 ** 31 - 1 }))).map(lineFrom)
}

/** Line number `seed` */
export function lineFrom(seed: number): LineSpec {
  const choose = choicesFrom(seed)
  const style: TimeStyle = choose.chance(0.5) ? 'whole' : 'mixed'
  const count = choose.whole(3, 12)
  const zones = randomZones(choose, style, count)
  const paths = randomPaths(choose, style, zones)
  const { stations, tasks, variants } = randomStations(choose, style, zones)
  return {
    ...PLAIN_LINE,
    sections: wholeLine(count),
    zones,
    paths,
    carriers: randomCarriers(choose, style, zones),
    reactionSeconds: style === 'whole' ? choose.pick([0, 0.25, 0.5]) : choose.pick([0, 0.1, 0.15]),
    staggerSeconds: style === 'whole' ? choose.pick([0, 0.5, 1]) : choose.pick([0, 0.1, 0.3]),
    stations,
    tasks,
    variants,
    mix: randomMix(choose, variants.length),
    breakdowns: randomBreakdowns(choose, style, zones, stations.length),
    breaks: randomBreaks(choose, style),
    conveyorDuringBreaks: choose.chance(0.5),
    window: randomWindow(choose, style),
  }
}

/** Carriers are shorter than the shortest zone and longer than the longest sensor offset. */
function randomZones(choose: Choices, style: TimeStyle, count: number): ZoneSpec[] {
  const someTrain = choose.chance(0.4)
  const someTransfers = choose.chance(0.7)
  let leftExitClear = count - 2 // so that at least two places to wait are left
  let before = false
  return Array.from({ length: count }, (_, index) => {
    // transfers come in clusters, so that two exit-clear ones in a row are not rare
    const isTransfer = someTransfers && choose.chance(before ? 0.6 : 0.25)
    before = isTransfer
    const exitClear = isTransfer && leftExitClear > 0 && choose.chance(0.55)
    if (exitClear) leftExitClear -= 1
    return {
      ...PLAIN_ZONE,
      name: choose.chance(0.1) ? `zone "${index}"` : `Z${index + 1}`,
      lengthMetres: style === 'whole' ? choose.whole(2, 3) : choose.pick([0.8, 1.04, 1.5]),
      sensorBeforeStopMetres: isTransfer ? 0 : choose.pick([0, 0, 0.078125, 0.25]),
      release: someTrain && choose.chance(0.7) ? 'train' : 'single',
      transfer: isTransfer
        ? {
            liftSeconds: someTime(choose, style, 2, true),
            lowerSeconds: someTime(choose, style, 2, true),
            enterOnlyIfExitClear: exitClear,
          }
        : null,
    }
  })
}

function randomPaths(choose: Choices, style: TimeStyle, zones: readonly ZoneSpec[]): PathSpec[] {
  const count = zones.length
  const givenShare = choose.pick([0, 0, 0.4, 1])
  const clearShare = choose.pick([0, 0, 0.3])
  const speed = style === 'whole' ? 1 : choose.pick([0.2, 0.25, 0.3])
  const acceleration = style === 'whole' ? choose.pick([null, 0.5, 1]) : choose.pick([null, 0.5, 0.4, 0.05])
  const ends = zones.map((zone) => (zone.transfer === null ? ['low', 'low'] : choose.pick(WAYS)) as [Position, Position])
  // given moves of nothing, of one whole time, or each its own
  const one = someTime(choose, style, 2, false)
  const zeros = choose.chance(0.5)
  const givenMove = (): Distribution => {
    if (zeros && choose.chance(0.7)) return { kind: 'constant', value: 0 }
    return choose.chance(0.5) ? { kind: 'constant', value: one } : someDistribution(choose, style, 2, true)
  }
  const paths = zones.map((_, from): PathSpec => {
    const to = (from + 1) % count
    const given = choose.chance(givenShare)
    const clearGiven = choose.chance(given ? 0.4 : clearShare)
    return {
      ...PLAIN_PATH,
      from,
      to,
      distanceMetres: given ? null : zones[to]!.lengthMetres,
      speedMetresPerSecond: choose.chance(0.1) ? speed * 2 : speed,
      accelerationMetresPerSecondSquared: acceleration,
      across: choose.chance(0.2),
      fromPosition: ends[from]![1],
      toPosition: ends[to]![0],
      moveSeconds: given ? givenMove() : null,
      clearSeconds: clearGiven ? someDistribution(choose, style, 2, true) : given && choose.chance(0.5) ? 'move' : null,
    }
  })
  // A lap of an empty carrier must take time.
  if (paths.every((path) => path.moveSeconds !== null)) paths[0] = { ...paths[0]!, moveSeconds: { kind: 'constant', value: 2 } }
  return paths
}

/** position of the way in, of the way out */
const WAYS = [
  ['low', 'high'],
  ['high', 'low'],
  ['low', 'high'],
  ['high', 'low'],
  ['low', 'low'],
  ['high', 'high'],
]

function randomCarriers(choose: Choices, style: TimeStyle, zones: readonly ZoneSpec[]): CarriersSpec {
  const places = zones.filter((zone) => !zone.transfer?.enterOnlyIfExitClear).length
  const fewer = places < zones.length
  const most = fewer && choose.chance(0.45) ? places : places - 1
  const count = choose.chance(0.45) ? most : choose.whole(1, most)
  const kind = choose.pick(['spread', 'packed', 'list'] as const)
  const list = choose.shuffled(zones.map((_, index) => index)).slice(0, count)
  const lengths = style === 'whole' ? [0.5, 0.75] : [0.4, 0.75]
  return { count, lengthMetres: choose.pick(lengths), widthMetres: choose.pick(lengths), start: kind === 'list' ? list : kind }
}

function randomMix(choose: Choices, variants: number): MixSpec {
  const shares = Array.from({ length: variants }, (_, index) => (index > 0 && choose.chance(0.1) ? 0 : choose.whole(1, 5)))
  const sequence = (length: number): number[] => Array.from({ length }, () => choose.whole(0, variants - 1))
  switch (choose.pick(['random', 'levelled', 'pattern', 'list', 'list'] as const)) {
    case 'random':
      return { kind: 'random', shares: shares.map((share) => share * choose.pick([1, 0.1, 7])) }
    case 'levelled':
      return { kind: 'levelled', shares }
    case 'pattern':
      return { kind: 'pattern', sequence: sequence(choose.whole(1, 6)) }
    case 'list':
      return { kind: 'list', sequence: sequence(choose.chance(0.9) ? choose.whole(1, 10) : 500) }
  }
}

function randomBreakdowns(choose: Choices, style: TimeStyle, zones: readonly ZoneSpec[], stations: number): BreakdownSpec[] {
  if (choose.chance(0.3)) return []
  const transfers = zones.map((_, index) => index).filter((index) => zones[index]!.transfer !== null)
  const parts: BreakdownPart[] = []
  const count = choose.whole(1, 6)
  while (parts.length < count) {
    const kind = choose.pick(['station', 'zone', 'transfer', 'transfer', 'section'] as const)
    if (parts.length > 0 && choose.chance(0.25)) parts.push(choose.pick(parts))
    else if (kind === 'section') parts.push({ kind, index: 0 })
    else if (kind === 'zone') parts.push({ kind, index: choose.whole(0, zones.length - 1) })
    else if (kind === 'station' && stations > 0) parts.push({ kind, index: choose.whole(0, stations - 1) })
    else if (kind === 'transfer' && transfers.length > 0) parts.push({ kind, index: choose.pick(transfers) })
    else parts.push({ kind: 'zone', index: 0 })
  }
  return parts.map((part, index) => ({
    name: `source ${index}`,
    part,
    clock: choose.chance(0.6) ? 'operating' : 'calendar',
    timeToFailureSeconds: someDistribution(choose, style, choose.pick([5, 20, 80]), false),
    repairSeconds: someDistribution(choose, style, choose.pick([2, 10]), true),
  }))
}

function randomBreaks(choose: Choices, style: TimeStyle): BreakSpec[] {
  const breaks: BreakSpec[] = []
  if (choose.chance(0.45)) return breaks
  // on the clock's grid, so that two breaks may follow one another without a gap but do not overlap
  let clock = choose.chance(0.15) ? 0 : onGrid(someTime(choose, style, 60, false))
  for (let count = choose.whole(1, 3); count > 0; count--) {
    const lengthSeconds = onGrid(someTime(choose, style, 20, false))
    breaks.push({ startSeconds: clock, lengthSeconds })
    clock += lengthSeconds + (choose.chance(0.15) ? 0 : onGrid(someTime(choose, style, 60, false)))
  }
  return breaks
}

function randomWindow(choose: Choices, style: TimeStyle): LineSpec['window'] {
  const warmupSeconds = choose.chance(0.4) ? 0 : someTime(choose, style, 60, false)
  // one line in twenty has more than an hour
  const length = choose.chance(0.05) ? 4000 : someTime(choose, style, choose.pick([100, 400]), false)
  return { warmupSeconds, endSeconds: warmupSeconds + length }
}
