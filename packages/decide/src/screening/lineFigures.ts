/** What a screening reads off a line. */
import { completeLine, type GivenLine } from '@loopwright/line'

/** Figures of a line that a screening looks at; null: the line does not say. */
export interface LineFigures {
  /** largest of all drives, metres per second */
  readonly speed: number | null
  /** largest of all drives, metres per second squared */
  readonly acceleration: number | null
  /** shortest zone, metres */
  readonly zoneLength: number | null
  /** name of the shortest zone */
  readonly zone: string | null
  readonly carrierLength: number | null
  readonly carrierWidth: number | null
  /** from the sensor to the stop point, of the zones that carriers stop in: the least, metres */
  readonly sensorBeforeStop: number
  /** seconds from the sensor's signal to the drive */
  readonly reactionSeconds: number
  /** stretch between two carriers that stand one after the other: the least, metres */
  readonly standingGap: number | null
  /** somebody pushes or pulls somewhere */
  readonly byHand: boolean
}

/**
 * Largest speeds, shortest zone, narrowest gap of a line.
 *
 * @example lineFigures(line).byHand // => false
 */
export function lineFigures(given: GivenLine): LineFigures {
  const line = completeLine(given)
  const { zones, paths, carriers } = line
  const known = (values: readonly (number | null)[]): number[] => values.filter((value) => value !== null)
  const driven = paths.filter(({ manual, moveSeconds }) => manual === null && moveSeconds === null)
  const most = (values: readonly number[]): number | null => (values.length === 0 ? null : Math.max(...values))
  const storing = zones.filter(({ transfer, lengthMetres }) => transfer === null && lengthMetres !== null)
  const shortest = storing.reduce<(typeof storing)[number] | null>(
    (least, zone) => (least === null || zone.lengthMetres! < least.lengthMetres! ? zone : least),
    null,
  )
  const zoneLength = shortest?.lengthMetres ?? null
  const sensors = storing.map(({ sensorBeforeStopMetres }) => sensorBeforeStopMetres)
  return {
    speed: most(known(driven.map(({ speedMetresPerSecond }) => speedMetresPerSecond))),
    acceleration: most(known(driven.map(({ accelerationMetresPerSecondSquared }) => accelerationMetresPerSecondSquared))),
    zoneLength,
    zone: shortest?.name ?? null,
    carrierLength: carriers.lengthMetres,
    carrierWidth: carriers.widthMetres,
    sensorBeforeStop: sensors.length === 0 ? 0 : Math.min(...sensors),
    reactionSeconds: line.reactionSeconds,
    standingGap: zoneLength === null || carriers.lengthMetres === null ? null : zoneLength - carriers.lengthMetres,
    byHand: paths.some(({ manual }) => manual !== null),
  }
}
