import { expect, test } from 'vitest'
import { blockLoop } from '../../../../tests/bench/lines.ts'
import { buildLine } from '../build/build.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { canRecur } from './canRecur.ts'

const plain = blockLoop(1, 1)
const line = buildLine(plain)

function recurs(changes: Partial<LineSpec>): boolean {
  const changed: Line = { ...line, spec: { ...plain, ...changes } }
  return canRecur(changed)
}

test('a plain loop does; what may make a carrier wait for anything else than the zones ahead does not', () => {
  const [first, ...rest] = plain.stations
  const [path, ...paths] = plain.paths
  const constant = { kind: 'constant', value: 1 } as const
  const supply = { name: 'supply', arrivals: { kind: 'every', seconds: constant }, queueLimit: null } as const
  expect(recurs({})).toBe(true)
  const wrong: Partial<LineSpec>[] = [
    { operators: [{ name: 'one', stations: [0], start: 0 }] },
    { inspections: [{ task: 0, rejectProbability: 0.1 }] },
    { rework: [{ task: 0, only: true }] },
    { repairCrews: 1 },
    { supply },
    { carriers: { ...plain.carriers, start: 'store' } },
    { carriers: { ...plain.carriers, count: 20 } },
    { mix: { kind: 'list', sequence: [0] } },
    { stations: [{ ...first!, supply }, ...rest] },
    { stations: [{ ...first!, receiver: { cycleSeconds: constant, queue: 0 } }, ...rest] },
    { stations: [{ ...first!, accepts: 'rejected' }, ...rest] },
    { stations: [{ ...first!, safetyStop: { probability: 0.1, resetSeconds: constant } }, ...rest] },
    { paths: [{ ...path!, takes: { ...path!.takes, load: 'empty' } }, ...paths] },
    { paths: [{ ...path!, manual: { kind: 'push', station: 0 } }, ...paths] },
    { paths: [...plain.paths, path!] },
    {
      breakdowns: [
        { name: 'b', part: { kind: 'zone', index: 0 }, clock: 'operating', timeToFailureSeconds: constant, repairSeconds: constant },
      ],
    },
  ]
  expect(wrong.map((changes) => recurs(changes))).toEqual(wrong.map(() => false))
})
