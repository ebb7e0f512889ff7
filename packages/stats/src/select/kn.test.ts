import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { knSelect } from '../../../../tests/helpers/knSelect.ts'
import { knSteps } from './kn.ts'

const options = { systems: 4, delta: 2, firstStage: 20, alpha: 0.05 }

/** Slippage: the best exactly δ = 2 above all others, the least favourable case of the theorem. Noise that all share, and noise of each system's own. */
test.each([
  { systems: 2, common: 0, own: [4, 4], what: 'two without common worlds' },
  { systems: 4, common: 8, own: [3, 3, 3, 3], what: 'four in common worlds' },
  { systems: 8, common: 5, own: [6, 1, 2, 3, 4, 5, 2, 1], what: 'eight of unequal spread, the best the widest' },
])('the best is chosen in 95 of 100 studies with all others exactly δ below: $what', ({ systems, common, own }) => {
  // 2,000 studies: at least 0.95 − 4 standard errors of 0.0049; false alarm below 4e-5
  const next = stream('7', 0, `selection ${systems}`)
  let right = 0
  for (let s = 0; s < 2000; s++) {
    const rows: number[][] = []
    const observe = (system: number, replication: number): number => {
      while (rows.length <= replication) {
        const shared = common * normalQuantile(next())
        rows.push(own.map((sd, i) => (i === 0 ? 2 : 0) + shared + sd * normalQuantile(next())))
      }
      return rows[replication]![system]!
    }
    if (knSelect({ ...options, systems }, observe).selected === 0) right++
  }
  expect(right / 2000).toBeGreaterThan(0.95 - 4 * 0.0049)
})

test('it asks for the same worlds for all that are still in, one replication after another', () => {
  const steps = knSteps({ systems: 3, delta: 0.1, firstStage: 5, alpha: 0.05 })
  const first = steps.next()
  expect(first.value).toEqual({ from: 0, below: 5, systems: [0, 1, 2] })
  const next = steps.next([
    [1, 2, 1, 2, 1],
    [2, 1, 2, 1, 2],
    [-90, -91, -90, -91, -90],
  ])
  expect(next.value).toEqual({ from: 5, below: 6, systems: [0, 1] })
})

test('no spread at all is decided at the first stage, ties to the lower index', () => {
  const choice = knSelect(options, (system) => (system === 2 || system === 3 ? 5 : 4))
  expect(choice).toEqual({ selected: 2, stage: 20, eliminated: [], replicationsMax: 0, observations: 80, status: 'decided at first stage' })
})

test('refused', () => {
  const observe = (): number => 1
  expect(() => knSelect({ ...options, delta: 0 }, observe)).toThrow('δ is 0: it must be above 0.')
  expect(() => knSelect({ ...options, systems: 1 }, observe)).toThrow('The number of systems is 1')
  expect(() => knSelect({ ...options, systems: 201 }, observe)).toThrow(expect.objectContaining({ code: 'E_TOO_LARGE' }))
  expect(() => knSelect({ ...options, firstStage: 1 }, observe)).toThrow('first stage is 1')
  expect(() => knSelect({ ...options, alpha: 1 }, observe)).toThrow('The chance of error is 1')
  expect(() => knSelect(options, () => Number.NaN)).toThrow('The output of system 1 holds NaN in row 1')
  const steps = knSteps(options)
  steps.next()
  expect(() => steps.next([[1]])).toThrow('1 systems came back of 4 asked for')
})
