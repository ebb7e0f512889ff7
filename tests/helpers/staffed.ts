/** A small loop with named operators. */
import type { LineSpec, OperatorSpec, WalkSpec } from '@loopwright/line'
import { smallLoop, timeline, type Wish } from './smallLoop.ts'

export interface Staff {
  readonly operators: readonly Partial<OperatorSpec>[]
  readonly walks?: readonly WalkSpec[]
  readonly needed?: Readonly<Record<number, number>>
}

/** Named op0, op1 …; moves of 4 s, clears of 3 s; `needed`: operators by station. */
export function staffed(wish: Wish, { operators, walks = [], needed = {} }: Staff): LineSpec {
  const spec = smallLoop({ move: 4, clear: 3, ...wish })
  return {
    ...spec,
    stations: spec.stations.map((station, s) => ({ ...station, operatorsNeeded: needed[s] ?? station.operatorsNeeded })),
    operators: operators.map((operator, o) => {
      const stations = operator.stations ?? [0]
      return { name: `op${o}`, stations, start: operator.start ?? stations[0]! }
    }),
    walks,
  }
}

/** Events of operators, work and stops. */
export const staffEvents = (spec: LineSpec): string[] => timeline(spec).filter((line) => !/ (clear|leave|rest|take|off) /.test(line))
