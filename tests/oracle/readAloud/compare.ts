/** What two runs of one line say differently. */
import type { RunResult, TallyResult } from '@loopwright/line'

/** means and the like, where the order of a sum shows in the last digits */
const RELATIVE = 1e-12

function near(a: number | null, b: number | null, scale = 0): boolean {
  if (a === null || b === null) return a === b
  return Math.abs(a - b) <= RELATIVE * Math.max(Math.abs(a), Math.abs(b), scale)
}

/** Differences between a run of the engine and of the reading aloud; empty: none. Sums of times on the clock's grid must be equal, means within 1e-12. `events` counts differ by nature. */
export function compare(engine: RunResult, aloud: RunResult): string[] {
  const differences: string[] = []
  const exact = (what: string, a: unknown, b: unknown): void => {
    const [left, right] = [JSON.stringify(a), JSON.stringify(b)]
    if (left !== right) differences.push(`${what}: engine ${left}, aloud ${right}`)
  }
  const mean = (what: string, a: number | null, b: number | null, scale = 0): void => {
    if (!near(a, b, scale)) differences.push(`${what}: engine ${a}, aloud ${b}`)
  }
  const tally = (what: string, a: TallyResult, b: TallyResult): void => {
    exact(`${what}.count`, a.count, b.count)
    exact(`${what}.min`, a.min, b.min)
    exact(`${what}.max`, a.max, b.max)
    mean(`${what}.mean`, a.mean, b.mean)
    mean(`${what}.sd`, a.sd, b.sd, b.mean ?? 0) // rounding in the squares is of the size of the mean
  }
  const causes = (what: string, a: RunResult['zones'][number]['stoppedBy'], b: RunResult['zones'][number]['stoppedBy']): void => {
    const sorted = (list: typeof a): unknown => list.filter((c) => c.seconds !== 0).sort((x, y) => (x.cause < y.cause ? -1 : 1))
    exact(what, sorted(a), sorted(b))
  }

  exact('seed', engine.seed, aloud.seed)
  exact('replication', engine.replication, aloud.replication)
  exact('window', [engine.window.warmupSeconds, engine.window.endSeconds], [aloud.window.warmupSeconds, aloud.window.endSeconds])
  exact('end.reason', engine.end.reason, aloud.end.reason)
  exact('end.atSeconds', engine.end.atSeconds, aloud.end.atSeconds)
  exact('end.waits', engine.end.waits, aloud.end.waits)
  exact('end.cycle', engine.end.cycle, aloud.end.cycle)
  exact('loads', engine.loads, aloud.loads)
  exact('output', engine.output, aloud.output)
  exact('rejections', engine.rejections, aloud.rejections)
  exact('rejectedTakenOff', engine.rejectedTakenOff, aloud.rejectedTakenOff)
  mean('outputPerHour', engine.outputPerHour, aloud.outputPerHour)
  exact('outputByHour', engine.outputByHour, aloud.outputByHour)
  exact('outputSeconds', engine.outputSeconds, aloud.outputSeconds)
  tally('lap', engine.lap, aloud.lap)
  tally('timeInLine', engine.timeInLine, aloud.timeInLine)
  mean('productsInLineMean', engine.productsInLineMean, aloud.productsInLineMean)
  exact('counts', counts(engine), counts(aloud))
  aloud.stations.forEach((b, index) => {
    const a = engine.stations[index]!
    exact(`stations[${index}].name`, a.name, b.name)
    exact(`stations[${index}].seconds`, a.seconds, b.seconds)
    exact(`stations[${index}].longestBlockSeconds`, a.longestBlockSeconds, b.longestBlockSeconds)
    exact(`stations[${index}].cycles`, a.cycles, b.cycles)
    causes(`stations[${index}].stoppedBy`, a.stoppedBy, b.stoppedBy)
  })
  aloud.zones.forEach((b, index) => {
    const a = engine.zones[index]!
    exact(`zones[${index}].name`, a.name, b.name)
    exact(`zones[${index}].seconds`, a.seconds, b.seconds)
    mean(`zones[${index}].occupancyMean`, a.occupancyMean, b.occupancyMean)
    exact(`zones[${index}].movesOut`, a.movesOut, b.movesOut)
    causes(`zones[${index}].stoppedBy`, a.stoppedBy, b.stoppedBy)
  })
  aloud.carriers.forEach((b, index) => {
    const a = engine.carriers[index]!
    exact(`carriers[${index}].seconds`, a.seconds, b.seconds)
    exact(`carriers[${index}].laps`, a.laps, b.laps)
  })
  aloud.breakdowns.forEach((b, index) => {
    const a = engine.breakdowns[index]!
    exact(`breakdowns[${index}].name`, a.name, b.name)
    exact(`breakdowns[${index}].count`, a.count, b.count)
    exact(`breakdowns[${index}].seconds`, a.seconds, b.seconds)
  })
  mean('storeMean', engine.storeMean, aloud.storeMean)
  aloud.supplies.forEach((b, index) => {
    const a = engine.supplies[index]!
    exact(`supplies[${index}]`, [a.name, a.arrivals, a.turnedAway, a.queueMax], [b.name, b.arrivals, b.turnedAway, b.queueMax])
    mean(`supplies[${index}].queueMean`, a.queueMean, b.queueMean)
    tally(`supplies[${index}].waiting`, a.waiting, b.waiting)
  })
  exact('end.unmanned', engine.end.unmanned, aloud.end.unmanned)
  exact('safetyStops', engine.safetyStops, aloud.safetyStops)
  exact('handlings', engine.handlings, aloud.handlings)
  exact('breaks.count', engine.breaks.count, aloud.breaks.count)
  exact('breaks.seconds', engine.breaks.seconds, aloud.breaks.seconds)
  return differences
}

function counts(run: RunResult): number[] {
  return [run.stations.length, run.zones.length, run.carriers.length, run.breakdowns.length, run.supplies.length]
}
