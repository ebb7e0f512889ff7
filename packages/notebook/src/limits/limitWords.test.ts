import { lineLimits } from '@loopwright/line/bounds'
import { readScenario, type Scenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { limitSentence, limitSentences, limitsTold } from './limitWords.ts'

const PUMP = `
format: 1
name: Pump line
question: What does it make?
plan: 330 per shift
calendar:
  shift: { from: "06:00", to: "14:00", perDay: 2 }
  breaks: [{ after: 240 min, lasts: 30 min }]
  judge: second shift
drive: { speed: 12 m/min, acceleration: 0.4 m/s² }
carriers: { count: 9, length: 0.9 m, width: 0.9 m }
loop: 16 zones of 1.2 m
corners: { zones: [Z04, Z12], turn: right, lift: 4 s, lower: 4 s }
stations:
  S1: { name: Load, zone: Z01, load: { place: 30 s } }
  S2: { name: Impeller, zone: Z03, work: { impeller: 62 s ± 20 % } }
  S3: { name: Seal, zone: Z05, work: { seal: 55 s ± 20 % } }
  S4: { name: Cover, zone: Z07, work: { cover: 70 s ± 20 % } }
  S5: { name: Test, zone: Z09, work: { test: 48 s ± 20 % } }
  S6: { name: Paint, zone: Z11, work: { paint: 66 s ± 20 % } }
  S7: { name: Unload, zone: Z14, unload: { takeOff: 30 s } }
operators:
  Ann: { stations: [S3, S4] }
stops:
  jam: { at: S5, after: exponential 45 min, lasts: exponential 3 min }
`
const read = (text: string): Scenario => {
  const { scenario, problems } = readScenario(text)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return scenario
}
const shift = { one: 'shift', each: 'a shift', many: 'shifts', plan: null, line: 'loop', named: null } as const

test('one person for two stations: by name, with the plan, before anything runs', () => {
  // net 8 h − 30 min = 27 000 s over 55 + 70 = 125 s: 216
  const { sentences, table, warnings, constraint } = limitsTold(read(PUMP))
  expect(sentences[0]).toBe(
    'Ann can serve at most 216 units a shift (125 s of work for each); the plan of 330 cannot be met on average. Waiting for each other comes on top.',
  )
  expect(sentences[1]).toMatch(/^Next come S4 Cover \(about 33\d\) and S6 Paint \(about 3\d\d\)\.$/)
  expect(constraint).toBe('operator')
  expect(table!.rows[0]).toMatchObject({ cells: ['Ann', '125.0', '216', 'at most', ''], marked: true })
  expect(warnings.map(({ code }) => code)).toEqual(['plan above a limit'])
})

test('walking and release are named where there are any', () => {
  const text = PUMP.replace('stops:', 'walks:\n  - { between: [S3, S4], lasts: 3 s }\nstops:').replace('plan: 330', 'plan: 150')
  const [first, why] = limitsTold(read(text)).sentences
  expect(first).toBe(
    'Ann can serve about 206 units a shift (131 s of work and walking for each); the plan of 150 takes 73\u202f% of it. Waiting for each other comes on top.',
  )
  expect(why).toBe('That is an estimate: walking from station to station in turn.')
})

test('a stop that comes every 45 s and lasts 3 min is no small matter, and is asked about', () => {
  const { sentences, warnings } = limitsTold(read(PUMP.replace('exponential 45 min', 'exponential 45 s')))
  // 48 s of work, 4 · 48 s of stops, 14.6 s of moves: 27 000 / 254.6
  expect(sentences[0]).toMatch(
    /^S5 Test can do about 10\d units a shift \(25\d\.\d s each: 48 s of work, 1\d\.\d s of moves in and out, 192 s of stops\)/,
  )
  expect(warnings.map(({ text }) => text).at(-1)).toBe(
    'The stop jam comes after 45 s of operation and lasts 3 min, longer than the time between: what it stops is up for 20\u202f% of the time. Are the two the right way round?',
  )
})

test('arrivals, receivers, carriers and room have sentences of their own', () => {
  const goods = PUMP.replace('unload: { takeOff: 30 s }', 'unload: { takeOff: 30 s }, receiver: { cycle: 100 s, queue: 1 }').replace(
    'stops:',
    'supply: { every: 90 s }\nstops:',
  )
  const said = lineLimits(read(goods).line).map((limit) => limitSentence(limit, shift))
  expect(said).toContain('Products arrive for at most 320 units a shift (one every 90 s)')
  expect(said).toContain('The receiver at S7 Unload takes at most 288 units a shift (one every 100 s)')
  expect(said.some((one) => /^9 carriers can carry about \d+ units a shift \(\d+\.\d s for each round\)$/.test(one))).toBe(true)
  expect(said.some((one) => /^The free zones between 9 carriers let through about/.test(one))).toBe(true)
})

test('a quick line keeps the digits that its parts add up with, and what is far away is not what comes next', () => {
  const quick = `
format: 1
name: Vial line
question: How quick is it?
warmup: 5 min
length: 1 h
drive: { speed: 30 m/min, acceleration: 3 m/s², reaction: 20 ms }
carriers: { count: 30, length: 80 mm }
loop: 60 zones of 100 mm
stations:
  F: { zone: Z10, automatic: true, load: { fill: 1.2 s } }
  C: { zone: Z30, automatic: true, work: { cap: 1.3 s } }
  U: { zone: Z50, automatic: true, unload: { pick: 1.1 s } }
stops:
  jam: { at: C, chance: 1 per 1000 cycles, lasts: exponential 20 s }
`
  const { sentences, table } = limitsTold(read(quick))
  // by hand: 0.1 m at 0.5 m/s and 0.5/3 s of ramp, cleared after 0.08 m and a reaction of 0.02 s; 20 s in a thousand cycles
  expect(sentences[0]).toContain('(1.95 s each: 1.3 s of work, 0.63 s of moves in and out, 0.02 s of stops)')
  const rows = table!.rows.map(({ cells }) => cells[0]!)
  for (const name of sentences.find((one) => /^Next/.test(one))?.match(/[FCU](?= \()|room[^(]*(?= \()/g) ?? []) expect(rows).toContain(name)
})

test('nothing known is said as that', () => {
  expect(limitSentences([], shift)).toEqual([
    'No limit of the line is known: no product is ever taken off, or it has too many ways to look at.',
  ])
})
