import type { Figure } from '../draw/figure.ts'
import { waitingCircle } from '../times/waitingCircle.ts'

const ZONES = Array.from({ length: 12 }, (_, zone) => ({
  name: `Z${String(zone + 1).padStart(2, '0')}`,
  station: zone === 4 ? 'Tightness test' : null,
}))

/** A repair spur comes back into the loop at Z05, and fills the way to itself. */
export function waitingCircleExample(): Figure {
  return waitingCircle(
    {
      reason: 'merge fills its own exit',
      circle: [2, 3, 4, 5, 6, 7, 8, 9, 10, 11],
      behind: [0, 1],
      merge: 4,
      unmanned: [],
      understaffed: [],
    },
    ZONES,
    5025,
  )
}
