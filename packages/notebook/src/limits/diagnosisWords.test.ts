import type { Diagnosis, Evidence, Named } from '@loopwright/study'
import { expect, test } from 'vitest'
import { diagnosisSentences, evidenceSentence } from './diagnosisWords.ts'

const line = { stations: ['S1', 'S2'].map((name) => ({ name, title: name })) }
const words = { one: 'shift', each: 'a shift' }
const named = (name: string, kind: Named['kind'] = 'station'): Named => ({ kind, name, stations: [1], operators: [] })
const states = (one: Named | null, state: Extract<Evidence, { source: 'states' }>['state']): Evidence => ({
  source: 'states',
  named: one,
  station: 1,
  state,
  share: state === 'busy' ? 0.97 : 0.44,
})
const driver = (one: Named): Evidence => ({
  source: 'driver',
  named: one,
  effect: {
    kind: 'task',
    name: one.name,
    station: 1,
    lessIsBetter: true,
    unitsOfStep: 8,
    elasticity: { n: 20, mean: 0.5, sd: 0.1, level: 0.95, halfWidth: 0.02, low: 0.48, high: 0.52, status: 'ok' },
  },
})

test('agreement is said only where two name the same, and with the name', () => {
  const all = [driver(named('S2')), states(named('S2'), 'busy')]
  const agreed: Diagnosis = { limitedBy: named('S2'), evidence: all, agrees: true, asTight: [] }
  expect(diagnosisSentences(agreed, line, words)).toEqual([
    'What limits the line: S2.',
    'Of what takes time, 1 % less of S2 brings most: 0.50 % more output.',
    'S2 waits for others for only 3\u202f% of the time outside breaks, less than any other station.',
    'What less time brings and the waiting of the stations both point at S2.',
  ])
  const alone: Diagnosis = { limitedBy: named('S2'), evidence: [states(named('S2'), 'busy')], agrees: false, asTight: [] }
  expect(diagnosisSentences(alone, line, words)).toHaveLength(2)
})

test('where they disagree each is named with its source', () => {
  const evidence = [driver(named('S2')), states(named('Ann', 'operator'), 'waiting for operator')]
  expect(diagnosisSentences({ limitedBy: named('S2'), evidence, agrees: false, asTight: [] }, line, words).at(-1)).toBe(
    'But the waiting of the stations points at Ann. The change that was simulated is the better guide.',
  )
})

test('a station that stands alone is compared with none', () => {
  const alone = { stations: [{ name: 'S1', title: 'S1' }] }
  for (const state of ['busy', 'starved', 'blocked', 'waiting for operator'] as const)
    expect(evidenceSentence({ ...states(null, state), station: 0 } as Evidence, alone, words)).not.toMatch(/any other|any station|busiest/)
})

test('nothing named is said as that', () => {
  expect(diagnosisSentences({ limitedBy: null, evidence: [], agrees: false, asTight: [] }, line, words)).toEqual([
    'Nothing is shown to limit the line.',
  ])
})

test('each state has its sentence, with the share that the run has', () => {
  const say = (state: Extract<Evidence, { source: 'states' }>['state']): string => evidenceSentence(states(null, state), line, words)
  expect(say('waiting for operator')).toBe(
    'S2 is waiting for an operator for 44\u202f% of the shift, the longest such wait of any station.',
  )
  expect(say('waiting for product')).toContain('S2 is waiting for products for 44')
  expect(say('waiting for receiver')).toContain('S2 is waiting for its receiver for 44')
  expect(say('starved')).toBe('Even the busiest station, S2, is without a carrier for 44\u202f% of the shift.')
  expect(say('blocked')).toBe('Even the busiest station, S2, cannot let go of its carrier for 44\u202f% of the shift.')
})
