/** Which of the moves that could start now starts. (MODEL.md §1 "Within one instant", §3 "Right of way") */
import { STORE } from '@loopwright/line'
import { type Offer, offerOf } from './moves.ts'
import type { World } from './world.ts'

/** null: no move can start */
export function nextMove(w: World): Offer | null {
  const offers = w.carriers.map((_, carrier) => offerOf(w, carrier, false)).filter((offer) => offer !== null)
  const left = offers.filter((offer) => mergeLets(w, offer, offers))
  // "longest waiting, then lower path index"
  return left.reduce<Offer | null>((first, offer) => (first === null || ranksBefore(w, offer, first) ? offer : first), null)
}

function ranksBefore(w: World, a: Offer, b: Offer): boolean {
  const [left, right] = [w.carriers[a.carrier]!.waitsSince!, w.carriers[b.carrier]!.waitsSince!]
  return left < right || (left === right && a.path < b.path)
}

/** "Only carriers whose next zone it is are compared" */
function mergeLets(w: World, offer: Offer, offers: readonly Offer[]): boolean {
  const { to } = w.spec.paths[offer.path]!
  if (to === STORE) return true
  const rivals = offers.filter(({ path }) => w.spec.paths[path]!.to === to)
  const { merge } = w.spec.zones[to]!
  if (merge.kind === 'waiting') return true
  const rank = ({ path }: Offer): number => {
    if (merge.kind === 'alternate') return path === w.zones[to]!.lastPathIn ? 1 : 0
    const place = merge.from.indexOf(w.spec.paths[path]!.from)
    return place < 0 ? merge.from.length : place // "Zones not in a `priority` list come last"
  }
  return rivals.every((rival) => rank(offer) <= rank(rival))
}
