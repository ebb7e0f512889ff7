/** Gridlock and out of products, judged at the end of each instant "as if no stop were there". (MODEL.md §10) */
import { type RunEnd, STORE } from '@loopwright/line'
import { productIsToCome } from './goods.ts'
import { calls } from './people.ts'
import { waitsForProduct, waitsForReceiver } from './readiness.ts'
import { somethingCouldStart } from './starts.ts'
import { wayByDivert } from './wayOut.ts'
import { isExitClear, type World } from './world.ts'

/** null: the line goes on */
export function standstill(w: World): RunEnd | null {
  const moving = w.moves.length > 0
  const working = w.carriers.some((carrier) => carrier.work !== null || typeof carrier.release !== 'string')
  const changing = w.zones.some((zone) => zone.change !== null)
  const walking = w.operators.some(({ walkLeft }) => walkLeft !== null)
  if (moving || working || changing || walking || somethingCouldStart(w)) return null
  const stations = [...w.spec.stations.keys()]
  // "no arrival or receiver that a station waits for is to come"
  if (stations.some((station) => waitsForProduct(w, station) && productIsToCome(w, station))) return null
  if (stations.some((station) => waitsForReceiver(w, station) && w.receivers[station]!.left !== null)) return null
  const outOfProducts = stations.some((station) => waitsForProduct(w, station))
  const waits = waitingPairs(w)
  return {
    reason: outOfProducts ? 'out of products' : 'gridlock',
    atSeconds: w.t,
    waits,
    cycle: firstCycle(waits),
    unmanned: unmanned(w),
  }
}

/** "(zone, zone it waits for; behind an exit-clear transfer the zone after it)", by zone */
function waitingPairs(w: World): [number, number][] {
  const pairs: [number, number][] = []
  w.zones.forEach((zone, index) => {
    if (zone.state !== 'occupied' || w.carriers[zone.carrier!]!.waitsSince === null) return
    if (calls(w, true).some(({ manual }) => manual?.carrier === zone.carrier)) return // it waits for somebody, not for a zone
    const ahead = zoneWaitedFor(w, zone.carrier!)
    if (ahead !== null) pairs.push([index, ahead])
  })
  return pairs
}

function zoneWaitedFor(w: World, carrierIndex: number): number | null {
  const carrier = w.carriers[carrierIndex]!
  let way = wayByDivert(w, carrier, carrier.place)
  if (way === null || w.spec.paths[way]!.to === STORE) return null
  const met = [w.spec.paths[way]!.to]
  while (isExitClear(w.spec, met.at(-1)!)) {
    way = wayByDivert(w, carrier, met.at(-1)!)
    // "A transfer behind which there is only the store is itself what is waited for."
    if (way === null || w.spec.paths[way]!.to === STORE) break
    const { to } = w.spec.paths[way]!
    if (met.includes(to)) return to // a ring of them, which nobody can claim: where it is met
    met.push(to)
  }
  return met.at(-1)!
}

/** "the first cycle met when these are followed from the lowest zone" */
function firstCycle(pairs: readonly (readonly [number, number])[]): number[] {
  for (const [lowest] of pairs) {
    const way: number[] = []
    let zone: number | undefined = lowest
    while (zone !== undefined && !way.includes(zone)) {
      way.push(zone)
      zone = pairs.find(([from]) => from === zone)?.[1]
    }
    if (zone !== undefined) return way.slice(way.indexOf(zone))
  }
  return []
}

/** zones whose station, or whose push or pull, waits for an operator who is not free */
function unmanned(w: World): number[] {
  const zones = calls(w, true).map(({ station, manual }) =>
    manual === null ? w.spec.stations[station]!.zone : w.carriers[manual.carrier]!.place,
  )
  return [...new Set(zones)].filter((zone) => zone !== STORE).sort((a, b) => a - b)
}
