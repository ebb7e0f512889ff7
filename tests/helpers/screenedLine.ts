/** Figures of a line to be screened: 15 m/min, zones of 1.5 m, carriers of 1.2 m. */
import type { LineFigures } from '@loopwright/decide/screening'

export const screenedLine: LineFigures = {
  speed: 0.25,
  acceleration: 0.4,
  zoneLength: 1.5,
  zone: 'Z01',
  carrierLength: 1.2,
  carrierWidth: 1.2,
  sensorBeforeStop: 0.078125,
  reactionSeconds: 0.15,
  standingGap: 0.3,
  byHand: false,
}
