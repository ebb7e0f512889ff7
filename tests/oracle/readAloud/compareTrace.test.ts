import { simulate, Trace } from '@loopwright/line'
import { expect, test } from 'vitest'
import { compareTrace } from './compareTrace.ts'
import { drivenLoop, until, withStations, withTransfer } from './lineFor.ts'
import { readAloud } from './readAloud.ts'

test('one entry less, later by a tick or with another carrier is found; the order within an instant is free', () => {
  const spec = until(withTransfer(withStations(drivenLoop(6, [0, 1]), { zone: 2, load: 3, unload: 2, release: 1 }), 4, 2, 1, 'low'), 100)
  const trace = new Trace()
  simulate(spec, { seed: 'trace', replication: 0, trace })
  const { log } = readAloud(spec, 'trace', 0)
  expect(compareTrace(trace, log)).toEqual([])
  // entries of one instant in the opposite order
  expect(
    compareTrace(
      trace,
      [...log].reverse().sort((a, b) => a.t - b.t),
    ),
  ).toEqual([])
  log.forEach((entry, index) => {
    if (entry.what === 'ended') return
    expect(compareTrace(trace, log.toSpliced(index, 1)).length).toBeGreaterThan(0)
    expect(compareTrace(trace, log.with(index, { ...entry, t: entry.t + 2 ** -20 })).length).toBeGreaterThan(0)
    if (entry.what === 'at rest') expect(compareTrace(trace, log.with(index, { ...entry, carrier: 1 - entry.carrier }))).not.toEqual([])
  })
})
