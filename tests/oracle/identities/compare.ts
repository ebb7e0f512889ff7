/** A run's result against its recount: the differences, in words; none when all is well. */
import { type LineSpec, type RunResult, simulate, Trace } from '@loopwright/line'
import { type CauseSeconds, type Recount, recount } from './recount.ts'
import { total } from '../../helpers/spent.ts'

/**
 * Runs the line for its window, with its rules checked and (on shorter ways inside) without, and once with a trace and for longer, so that it tells how the
 * last stays went on; and compares.
 */
export function differences(spec: LineSpec, seed: string, replication: number, verify = true): string[] {
  const result = simulate(spec, { seed, replication, verify })
  const plain = simulate(spec, { seed, replication })
  const trace = new Trace()
  const { warmupSeconds, endSeconds } = spec.window
  const longer = { ...spec, window: { warmupSeconds, endSeconds: endSeconds + 0.25 * (endSeconds - warmupSeconds) + 100 } }
  const more = simulate(longer, { seed, replication, trace })
  const ended = result.end.reason === 'end of window' ? more.end : result.end
  const told = recount(spec, trace, ended)
  return [...compare(spec, result, told), ...compare(spec, plain, told).map((found) => `without checks: ${found}`)]
}

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b))
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0)

export function compare(spec: LineSpec, result: RunResult, told: Recount): string[] {
  const found: string[] = []
  const same = (what: string, is: unknown, wanted: unknown): void => {
    if (JSON.stringify(is) !== JSON.stringify(wanted)) found.push(`${what}: told ${JSON.stringify(is)}, counted ${JSON.stringify(wanted)}`)
  }
  const holds = (what: string, is: boolean): void => {
    if (!is) found.push(what)
  }
  const { warmupSeconds, endSeconds } = result.window
  const window = endSeconds - warmupSeconds
  const carriers = spec.carriers.count

  result.stations.forEach((station, s) => {
    const counted = told.stations[s]!
    sameSeconds(`station ${station.name}`, Object.values(station.seconds), counted.seconds, counted.unknown, found)
    same(`station ${station.name} shares`, total(station.seconds), window)
    if (counted.unknown === 0) same(`station ${station.name} longest block`, station.longestBlockSeconds, counted.longestBlock)
    same(`station ${station.name} cycles`, station.cycles, counted.cycles)
    sameCauses(`station ${station.name}`, station.stoppedBy, counted.causes, found)
  })
  result.zones.forEach((zone, z) => {
    const counted = told.zones[z]!
    sameSeconds(`zone ${zone.name}`, Object.values(zone.seconds), counted.seconds, counted.unknown, found)
    same(`zone ${zone.name} shares`, total(zone.seconds), window)
    same(`zone ${zone.name} occupancy`, zone.occupancyMean, counted.occupied / window)
    same(`zone ${zone.name} moves out`, zone.movesOut, counted.movesOut)
    sameCauses(`zone ${zone.name}`, zone.stoppedBy, counted.causes, found)
  })
  result.carriers.forEach((carrier, c) => {
    same(`carrier ${c}`, Object.values(carrier.seconds), told.carriers[c]!.seconds)
    same(`carrier ${c} shares`, total(carrier.seconds), window)
    same(`carrier ${c} laps`, carrier.laps, told.carriers[c]!.laps)
  })
  same('occupancy of all zones', sum(told.zones.map((zone) => zone.occupied)), carriers * window)
  holds('the occupancies told do not sum to the carriers', close(sum(result.zones.map((zone) => zone.occupancyMean)), carriers))
  same('loads', result.loads, told.loads)
  same('outputs', result.outputSeconds, told.outputs)
  same('output', result.output, told.outputs.length)
  const hours = Array.from({ length: Math.ceil(window / 3600) }, (_, h) => {
    const from = warmupSeconds + h * 3600
    return told.outputs.filter((at) => at > from && at <= from + 3600).length
  })
  same('output by hour', result.outputByHour, hours)
  holds('output per hour', close(result.outputPerHour, (told.outputs.length * 3600) / window))
  same('products in line', result.productsInLineMean, told.productSeconds / window)
  same('products in line, product by product', told.productSecondsByProduct, told.productSeconds)
  sameTally('lap', result.lap, told.laps, found)
  sameTally('time in line', result.timeInLine, told.timesInLine, found)
  const sources = result.breakdowns.map(({ count, seconds }) => ({ count, seconds }))
  same('breakdowns', sources, told.breakdowns)
  same('breaks', result.breaks, told.breaks)
  holds(`moves out of two zones differ by ${told.movesApartMax}`, told.movesApartMax <= carriers)
  holds(`${told.leastInLine} to ${told.mostInLine} products in line`, told.leastInLine >= 0 && told.mostInLine <= carriers)
  return found
}

/** Exact but for the seconds that the trace does not tell apart, which must be there somewhere. */
function sameSeconds(what: string, is: readonly number[], counted: readonly number[], unknown: number, found: string[]): void {
  const rest = is.map((seconds, k) => seconds - counted[k]!)
  if (rest.every((seconds) => seconds >= 0) && sum(rest) === unknown) return
  found.push(`${what}: told ${is.join(' ')}, counted ${counted.join(' ')} (unknown ${unknown})`)
}

function sameCauses(what: string, is: RunResult['zones'][number]['stoppedBy'], counted: CauseSeconds, found: string[]): void {
  for (const cause of new Set([...is.map((entry) => entry.cause), ...counted.keys()])) {
    const seconds = is.find((entry) => entry.cause === cause)?.seconds ?? 0
    if (seconds !== (counted.get(cause) ?? 0)) found.push(`${what} stopped by ${cause}: told ${seconds}, counted ${counted.get(cause)}`)
  }
}

function sameTally(what: string, is: RunResult['lap'], values: readonly number[], found: string[]): void {
  const n = values.length
  const mean = n === 0 ? null : sum(values) / n
  const sd = n < 2 ? null : Math.sqrt(sum(values.map((x) => (x - mean!) ** 2)) / (n - 1))
  const near = (a: number | null, b: number | null): boolean =>
    a === null || b === null ? a === b : Math.abs(a - b) <= 1e-7 * Math.max(1, mean!)
  const least = n === 0 ? null : values.reduce((a, b) => Math.min(a, b))
  const most = n === 0 ? null : values.reduce((a, b) => Math.max(a, b))
  if (is.count === n && near(is.mean, mean) && near(is.sd, sd) && is.min === least && is.max === most) return
  found.push(`${what}: told ${JSON.stringify(is)}, counted ${JSON.stringify({ n, mean, sd, least, most })}`)
}
