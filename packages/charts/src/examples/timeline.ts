import type { CarrierStay } from '@loopwright/study'
import type { Figure } from '../draw/figure.ts'
import { timeline } from '../times/timeline.ts'

const ZONES = Array.from({ length: 12 }, (_, zone) => `Z${String(zone + 1).padStart(2, '0')}`)
const MOVE = 8
const WORK = [30, 0, 0, 45, 0, 0, 0, 55, 0, 0, 20, 0]

/** Four carriers behind each other on twelve zones; each waits until the one before has left. */
function stays(): CarrierStay[] {
  const free = ZONES.map(() => 0)
  const all: CarrierStay[] = []
  for (let step = 0; step < 30; step += 1)
    for (const carrier of [3, 2, 1, 0]) {
      const last = all.findLast((stay) => stay.carrier === carrier)
      const zone = last === undefined ? 3 * carrier : (last.zone + 1) % 12
      const enterSeconds = last === undefined ? 0 : last.leaveSeconds!
      const restSeconds = last === undefined ? 0 : enterSeconds + MOVE
      const doneSeconds = restSeconds + WORK[zone]!
      const leaveSeconds = Math.max(doneSeconds, free[(zone + 1) % 12]!)
      free[zone] = leaveSeconds + 5
      all.push({
        ...{ carrier, zone, enterSeconds, restSeconds, doneSeconds, leaveSeconds },
        works: WORK[zone]! > 0 ? [[restSeconds, doneSeconds]] : [],
      })
    }
  return all
}

export function timelineExample(): Figure {
  const pauses = [
    { name: 'break', from: 300, to: 420, zones: null, work: [0, 3, 7, 10], moves: [] },
    { name: 'Tester fault', from: 480, to: 540, zones: [7], work: [7], moves: [] },
  ]
  const places = ZONES.map((_, zone) => (zone === 7 ? 'Tester' : ''))
  return timeline(stays(), { zones: ZONES, fromSeconds: 60, toSeconds: 660, pauses, places })
}
