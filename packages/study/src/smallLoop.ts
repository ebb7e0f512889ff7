/** A small line for the tests of this package; no part of what is built. */

import { type LineSpec, PLAIN_LINE, PLAIN_PATH, PLAIN_STATION, PLAIN_ZONE, wholeLine } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'

const constant = (value: number): Distribution => ({ kind: 'constant', value })

/**
 * A loop of eight zones with given moves of 2 s and clears of 1 s: load in zone 0, work in zone 2 (lognormal, mean 20 s), unload in zone 4, breakdowns
 * of the work, one break; an hour to warm up, an hour judged.
 */
export function smallLoop(change: Partial<LineSpec> = {}): LineSpec {
  const zones = 8
  const station = { unload: null, load: null, work: null, releaseSeconds: constant(1), ...PLAIN_STATION }
  return {
    ...PLAIN_LINE,
    sections: wholeLine(zones),
    zones: Array.from({ length: zones }, (_, index) => ({
      ...PLAIN_ZONE,
      name: `Z${index + 1}`,
      lengthMetres: null,
      sensorBeforeStopMetres: 0,
      release: 'single',
      transfer: null,
    })),
    paths: Array.from({ length: zones }, (_, from) => ({
      ...PLAIN_PATH,
      from,
      to: (from + 1) % zones,
      distanceMetres: null,
      speedMetresPerSecond: null,
      accelerationMetresPerSecondSquared: null,
      across: false,
      fromPosition: 'low',
      toPosition: 'low',
      moveSeconds: constant(2),
      clearSeconds: constant(1),
    })),
    carriers: { count: 3, lengthMetres: null, widthMetres: null, start: 'spread' },
    reactionSeconds: 0,
    staggerSeconds: 0,
    stations: [
      { ...station, name: 'A', title: 'Load', zone: 0, load: [{ task: 0, seconds: [constant(8)] }] },
      { ...station, name: 'B', title: 'Fit', zone: 2, work: [{ task: 1, seconds: [{ kind: 'lognormal', mean: 20, cv: 0.3 }] }] },
      { ...station, name: 'C', title: 'Unload', zone: 4, unload: [{ task: 2, seconds: [constant(6)] }] },
    ],
    tasks: ['place', 'fit', 'take off'],
    variants: ['one'],
    mix: { kind: 'random', shares: [1] },
    breakdowns: [
      {
        name: 'jam',
        part: { kind: 'station', index: 1 },
        clock: 'operating',
        timeToFailureSeconds: { kind: 'exponential', mean: 1800 },
        repairSeconds: { kind: 'exponential', mean: 60 },
      },
    ],
    breaks: [{ startSeconds: 5000, lengthSeconds: 600 }],
    conveyorDuringBreaks: true,
    window: { warmupSeconds: 3600, endSeconds: 7200 },
    ...change,
  }
}
