import { readScenario, type Scenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { stopInputs, timeInputs } from './stopInputs.ts'

const YAML = `
format: 1
name: Shifts
question: How many?
plan: 30 per shift
calendar:
  shift: { from: "06:00", to: "08:00", perDay: 2 }
  breaks: [{ after: 60 min, lasts: 10 min }]
  conveyorDuringBreaks: true
  judge: second shift
drive: { speed: 15 m/min }
carriers: { count: 2, length: 0.8 m, width: 0.8 m }
loop: 6 zones of 1 m
corners: { zones: [Z03], turn: right, lift: 2 s, lower: 2 s }
stations:
  S1: { zone: Z01, unload: { takeOff: 12 s }, load: { place: 20 s } }
`

function scenario(): Scenario {
  const { scenario: found, problems } = readScenario(YAML)
  if (found === null) throw new Error(JSON.stringify(problems))
  return found
}

test('the shift that is judged, its breaks, plan and takt', () => {
  const rows = Object.fromEntries(timeInputs(scenario()).rows.map(({ cells }) => [cells[0], cells[1]]))
  expect(rows.Judged).toBe('second shift')
  expect(rows['Shift, gross']).toBe('120 min')
  expect(rows['Shift, net of breaks']).toBe('110 min')
  expect(rows['Counted from … to']).toBe('120 min … 240 min after the start, 120 min')
  expect(rows['Breaks counted']).toBe('10 min after 60 min')
  expect(rows['Conveyor during breaks']).toBe('runs')
  expect(rows.Plan).toBe('30 per shift')
  expect(rows.Takt).toBe('3.667 min (net time over plan)')
})

test('each source with its part and its clock; no table where nothing breaks down', () => {
  const { line } = scenario()
  expect(stopInputs(line)).toBeNull()
  const source = { timeToFailureSeconds: { kind: 'exponential', mean: 3600 }, repairSeconds: { kind: 'constant', value: 60 } } as const
  const whole = line.sections[0]!
  const table = stopInputs({
    ...line,
    sections: [whole, { ...whole, zones: [1, 2] }, { ...whole, zones: [0, 1, 2, 3, 4] }],
    breakdowns: [
      { name: 'a', part: { kind: 'station', index: 0 }, clock: 'operating', ...source },
      { name: 'b', part: { kind: 'zone', index: 1 }, clock: 'operating', ...source },
      { name: 'c', part: { kind: 'transfer', index: 2 }, clock: 'calendar', ...source },
      { name: 'd', part: { kind: 'section', index: 0 }, clock: 'calendar', ...source },
      { name: 'e', part: { kind: 'section', index: 1 }, clock: 'calendar', ...source },
      { name: 'f', part: { kind: 'section', index: 2 }, clock: 'calendar', ...source },
    ],
  })
  expect(table!.rows.map(({ cells }) => cells.slice(0, 3))).toEqual([
    ['a', 'S1', 'while it works'],
    ['b', 'zone Z02', 'while it works'],
    ['c', 'transfer Z03', 'always'],
    ['d', 'the whole line', 'always'],
    ['e', 'zones Z02 and Z03', 'always'],
    ['f', '5 zones, Z01 … Z05', 'always'],
  ])
  expect(table!.rows[0]!.cells.slice(3)).toEqual(['mean 60 min, exponential', '60 s'])
})
