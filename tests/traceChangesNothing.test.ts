/**
 * Without a trace the engine leaves out timers that nobody waits for (a clear that is only looked up); with one it keeps every timer, to tell events in order.
 * Both are one model: results must be equal in every number. The storing order of simultaneous timers must not matter either.
 */
import { simulate, Trace } from '@loopwright/line'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { randomLine } from './oracle/readAloud/randomLine.ts'

test('300 random lines: a trace, verifying and the storing order change no number', () => {
  fc.assert(
    fc.property(randomLine(), (line) => {
      const run = { seed: '5', replication: 0 }
      const plain = simulate(line, run)
      const forwards = new Trace()
      const backwards = new Trace()
      expect(simulate(line, { ...run, trace: forwards, verify: true })).toEqual(plain)
      expect(simulate(line, { ...run, trace: backwards, backwards: true })).toEqual(plain)
      expect(simulate(line, { ...run, backwards: true, verify: true })).toEqual(plain)
      expect(backwards.hash.digest()).toBe(forwards.hash.digest())
    }),
    { seed: 497, numRuns: 300 },
  )
})
