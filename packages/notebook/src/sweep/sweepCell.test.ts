import { readScenario, type Scenario } from '@loopwright/scenario'
import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { sweepCell } from './sweepCell.ts'

const YAML = `
format: 1
name: Six zones
question: How many?
warmup: 1 min
length: 10 min
drive: { speed: 30 m/min }
carriers: { count: 2, length: 0.8 m }
loop: 6 zones of 1 m
stations:
  S1: { zone: Z02, unload: { takeOff: 5 s }, load: { place: 6 s ± 20 % } }
`

function scenario(): Scenario {
  const { scenario: found, problems } = readScenario(YAML)
  if (found === null) throw new Error(JSON.stringify(problems))
  return found
}

const result = await sweepCarriers(scenario().line, { counts: [2, 3], replications: 4 }, { seed: 'abc', workers: 0 })

test('says what was simulated and how to get it again', () => {
  const cell = sweepCell(scenario(), result, 'scenarios/six.yaml')
  expect(cell.sentence).toBe('8 windows simulated with 2 to 3 carriers, 4 for each count, seed abc (the same seed, the same numbers).')
  expect(cell.provenance).toMatchObject({ scenarioFile: 'scenarios/six.yaml', seed: 'abc', replications: 4, partial: false })
})

test('the hash is that of the line: another question leaves it, another time changes it', () => {
  const hash = (of: Scenario): string => sweepCell(of, result, 'six.yaml').provenance.scenarioHash
  const { line } = scenario()
  expect(hash(scenario())).toMatch(/^[0-9a-f]{12}$/)
  expect(hash({ ...scenario(), question: 'Another?' })).toBe(hash(scenario()))
  expect(hash({ ...scenario(), line: { ...line, reactionSeconds: line.reactionSeconds + 0.1 } })).not.toBe(hash(scenario()))
})
