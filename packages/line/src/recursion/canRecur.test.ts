import { expect, test } from 'vitest'
import { blockLoop } from '../../../../tests/bench/lines.ts'
import { buildLine } from '../build/build.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { canRecur, whyNoRecursion } from './canRecur.ts'

const plain = blockLoop(1, 1)
const line = buildLine(plain)

function whyNot(changes: Partial<LineSpec>): string | null {
  const changed: Line = { ...line, spec: { ...plain, ...changes } }
  return whyNoRecursion(changed)
}

test('a plain loop does; what may make a carrier wait for anything else than the zones ahead does not', () => {
  const [first, ...rest] = plain.stations
  const [path, ...paths] = plain.paths
  const constant = { kind: 'constant', value: 1 } as const
  const supply = { name: 'supply', arrivals: { kind: 'every', seconds: constant }, queueLimit: null } as const
  expect(whyNot({})).toBe(null)
  expect(canRecur(plain)).toEqual({ holds: true, why: null })
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
  expect(wrong.map((changes) => whyNot(changes))).toEqual([
    'operators are shared by stations',
    'products are inspected',
    'products are inspected',
    'repairs wait for a crew',
    'products arrive',
    'it is not one closed loop',
    '20 carriers have 20 zones to wait in, so that it may stand still',
    'its list of products comes to an end',
    'station S1 has products that arrive',
    'station S1 has a receiver',
    'station S1 takes off rejected products',
    'station S1 has a safety stop',
    'carriers are pushed or pulled, or a path takes some of them only',
    'carriers are pushed or pulled, or a path takes some of them only',
    'it is not one closed loop',
    'stop "b" holds the moves of a zone',
  ])
})
