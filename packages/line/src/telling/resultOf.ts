/** From the collected columns to the plain record of a run. (MODEL.md §11) */
import { toGrid } from '@loopwright/kernel'
import { CARRIER_WIDTH, LONGEST_BLOCK, OCCUPIED_SECONDS, STATION_WIDTH, ZONE_WIDTH } from './collect.ts'
import { carrierSeconds, stationSeconds, zoneSeconds } from './byState.ts'
import type { HandlingResult, RunEnd, RunResult, StationResult, TallyResult } from './result.ts'
import type { Line } from '../state/line.ts'

const HOUR = 3600
/** What all parts share that never stopped. */
const NEVER: StationResult['stoppedBy'] = []

export function resultOf(line: Line, seed: string, replication: number, end: RunEnd): RunResult {
  const { collector: c, spec } = line
  const warmupSeconds = toGrid(spec.window.warmupSeconds)
  const endSeconds = toGrid(spec.window.endSeconds)
  const seconds = endSeconds - warmupSeconds
  const outputSeconds = firstOf(c.outputs.values, c.outputs.length)
  const stoppedBy = (column: Float64Array, part: number): StationResult['stoppedBy'] => {
    let told = NEVER
    const { names } = c.causes
    for (let k = 0; k < names.length; k++) {
      const stopped = column[part * names.length + k]!
      if (stopped > 0) told = [...told, { cause: names[k]!, seconds: stopped }]
    }
    return told
  }
  return {
    seed,
    replication,
    window: { warmupSeconds, endSeconds },
    end,
    loads: c.loads,
    output: outputSeconds.length,
    rejections: c.rejections,
    rejectedTakenOff: c.rejectedTakenOff,
    outputPerHour: (outputSeconds.length / seconds) * HOUR,
    outputByHour: countByHour(outputSeconds, warmupSeconds, seconds),
    outputSeconds,
    lap: tallyOf(c.lap),
    timeInLine: tallyOf(c.timeInLine),
    productsInLineMean: c.products[0]! / seconds,
    stations: spec.stations.map((station, s) => ({
      name: station.name,
      seconds: stationSeconds(c.stationSeconds, s * STATION_WIDTH),
      longestBlockSeconds: c.stationSeconds[s * STATION_WIDTH + LONGEST_BLOCK]!,
      cycles: c.cycles[s]!,
      stoppedBy: stoppedBy(c.causes.stationSeconds, s),
    })),
    zones: spec.zones.map((zone, z) => ({
      name: zone.name,
      seconds: zoneSeconds(c.zoneSeconds, z * ZONE_WIDTH),
      occupancyMean: c.zoneSeconds[z * ZONE_WIDTH + OCCUPIED_SECONDS]! / seconds,
      movesOut: c.movesOut[z]!,
      stoppedBy: stoppedBy(c.causes.zoneSeconds, z),
    })),
    carriers: Array.from({ length: line.carriers }, (_, k) => ({
      seconds: carrierSeconds(c.carrierSeconds, k * CARRIER_WIDTH),
      laps: c.carrierLaps[k]!,
    })),
    storeMean: c.stored.mean(endSeconds, seconds),
    supplies: line.goods.supplies
      .filter((supply) => !supply.always)
      .map(({ name, arrivals, turnedAway, queue, queueMax, times }) => ({
        name,
        arrivals,
        turnedAway,
        queueMean: queue.mean(endSeconds, seconds),
        queueMax,
        waiting: tallyOf(times),
      })),
    handlings: handlingsOf(line),
    breakdowns: spec.breakdowns.map((source, k) => ({ name: source.name, count: c.causes.count[k]!, seconds: c.causes.seconds[k]! })),
    safetyStops: [...line.safety.safetyStations].map((station, k) => ({
      name: spec.stations[station]!.name,
      count: c.causes.count[line.sources + k]!,
      seconds: c.causes.seconds[line.sources + k]!,
    })),
    breaks: { count: c.causes.count[c.causes.length - 1]!, seconds: c.causes.seconds[c.causes.length - 1]! },
    events: line.events,
  }
}

/** Named operators one by one; a station's own together, under its name. */
function handlingsOf(line: Line): HandlingResult[] {
  const told = line.spec.operators.map(({ name }, o) => ({
    operator: name,
    count: line.staff.handlingCount[o]!,
    seconds: line.staff.handlingSeconds[o]!,
  }))
  for (let o = line.spec.operators.length; o < line.operators; o++) {
    const operator = line.spec.stations[line.staff.operatorStart[o]!]!.name
    const [count, seconds] = [line.staff.handlingCount[o]!, line.staff.handlingSeconds[o]!]
    const last = told.at(-1)
    const more = o > line.spec.operators.length && line.staff.operatorStart[o] === line.staff.operatorStart[o - 1]
    if (more) told[told.length - 1] = { operator, count: last!.count + count, seconds: last!.seconds + seconds }
    else told.push({ operator, count, seconds })
  }
  return told
}

/** The first `count` values, one by one: a list made of a typed array by the language's own means takes several times as long. */
function firstOf(column: Float64Array, count: number): number[] {
  const values: number[] = []
  for (let k = 0; k < count; k++) values.push(column[k]!)
  return values
}

/** Hour h covers (warm-up + h·3600, warm-up + (h + 1)·3600]. */
function countByHour(instants: readonly number[], warmupSeconds: number, seconds: number): number[] {
  const counts = new Array<number>(Math.ceil(seconds / HOUR)).fill(0)
  for (const instant of instants) counts[Math.ceil((instant - warmupSeconds) / HOUR) - 1]!++
  return counts
}

function tallyOf(tally: Float64Array): TallyResult {
  const [count, mean, squares, min, max] = tally as unknown as [number, number, number, number, number]
  if (count === 0) return { count: 0, mean: null, sd: null, min: null, max: null }
  return { count, mean, sd: count < 2 ? null : Math.sqrt(squares / (count - 1)), min, max }
}
