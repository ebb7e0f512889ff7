import { readFileSync } from 'node:fs'
import { formatProblems } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { readDecision } from './readDecision.ts'

const demo = readFileSync(new URL('../../../../scenarios/base-line-decision/base-line.decision.yaml', import.meta.url), 'utf8')
const MONEY = 'money: { wage: 38 €/h, crew: 8, daysPerYear: 230, shiftsPerDay: 2, years: 7, interest: 10 % }'
const small = (...more: string[]): string =>
  ['format: 1', 'scenario: line.yaml', 'today: now', 'alternatives: { now: {}, loop: { investment: 1000 € } }', ...more].join('\n')
const codes = (text: string): (readonly [string, string, number])[] =>
  readDecision(text).problems.map(({ code, path, line }) => [code, path, line])

describe('a right file', () => {
  test('the example: four alternatives, money, screening, in base units', () => {
    const { decision, problems } = readDecision(demo)
    expect(problems).toEqual([])
    expect(decision!.alternatives.map(({ name, source }) => [name, source.kind])).toEqual([
      ['push line', 'file'],
      ['powered rollers', 'set'],
      ['zoned loop', 'scenario'],
      ['guided vehicles', 'file'],
    ])
    expect(decision!.alternatives[3]).toMatchObject({
      investment: { value: 620_000, doubt: 0.2 },
      runningCost: { value: 31_000, doubt: 0.1 },
      floor: 260,
    })
    expect(decision).toMatchObject({ today: 0, currency: '€', money: { wage: { value: 38, doubt: 0 }, interest: 0.1, hurdleMonths: 24 } })
    expect(decision!.money!.hurdleSource).toContain('common practice, no source')
    expect(decision!.screening).toMatchObject({ mass: 115, people: 'working', volts: 24, secondHand: false, fromMemory: false })
    expect(decision!.screening!.push).toMatchObject({
      speed: 0.25,
      startSeconds: 1,
      evenFloor: true,
      noTrapping: true,
      handsKnuckleToShoulder: true,
    })
    expect(decision!.screening!.devices[0]).toEqual({
      place: 'the tightness test',
      kind: 'curtain',
      stopSeconds: 0.32,
      resolution: 0.014,
      height: null,
      distance: 0.6,
    })
    expect(decision!.screening!.heights[0]).toEqual({ place: 'wiring', height: 0.95, work: 'light' })
    expect(decision!.screening!.load).toEqual({ base: 0.7, centreHeight: 0.6, friction: 0.25, drivenShare: 1 })
  })
  test('an alternative may be nothing but a name; what is left out has its default', () => {
    const { decision, problems } = readDecision(small(MONEY).replace('now: {}', 'now:'))
    expect(problems).toEqual([])
    expect(decision!.alternatives[0]).toMatchObject({ name: 'now', source: { kind: 'scenario' }, crew: null, investment: { value: 0 } })
    expect(decision!.money).toMatchObject({ overtimeFactor: 1.5, paidHours: null, overtimeWorked: null })
  })
  test('shifts that differ have a variation, changes, a crew and days of their own', () => {
    const { decision, problems } = readDecision(
      small(
        'promise: { until: x, daysPerWeek: 6, shifts: { early: {}, night: { variation: few, set: { plan: 90 per shift }, crew: 2, daysPerWeek: 4 } } }',
      ),
    )
    expect(problems).toEqual([])
    expect(decision!.promise).toMatchObject({
      shiftsPerDay: 2,
      shifts: [
        { name: 'early', variation: null, changes: {}, crew: null, daysPerWeek: 6 },
        { name: 'night', variation: 'few', changes: { plan: '90 per shift' }, crew: 2, daysPerWeek: 4 },
      ],
    })
  })
  test('times become hours and minutes, and own limits keep their source', () => {
    const text = small(
      MONEY.replace(' }', ', paidHours: 450 min, overtimeWorked: 20 min, hurdle: 3 years }'),
      'screening: { ownCopy: { startForce: { value: 0.13 kN, source: "ISO 11228-2, my copy" }, actionsPerMinute: { value: 30 /min, source: mine } } }',
    )
    const { decision, problems } = readDecision(text)
    expect(problems).toEqual([])
    expect(decision!.money).toMatchObject({ paidHours: 7.5, overtimeWorked: 20, hurdleMonths: 36, hurdleSource: 'as the file says' })
    expect(decision!.screening!.ownCopy).toEqual([
      { limit: 'startForce', value: 130, source: 'ISO 11228-2, my copy' },
      { limit: 'actionsPerMinute', value: 30, source: 'mine' },
    ])
  })
})

describe('what is wrong is told with its place', () => {
  test.each([
    [small().replace('format: 1', 'format: 2'), 'E_FORMAT', 'format', 1],
    [small().replace('today: now', 'today: nwo'), 'E_NOT_NAMED', 'today', 3],
    [small().replace('loop: { investment: 1000 € }', ''), 'E_TOO_FEW', 'alternatives', 4],
    [small().replace('1000 €', '1000'), 'E_UNIT_MISSING', 'alternatives.loop.investment', 4],
    [small().replace('1000 €', '410 000 €'), 'E_DECIMAL_COMMA', 'alternatives.loop.investment', 4],
    [small().replace('1000 €', '-5 €'), 'E_NEGATIVE', 'alternatives.loop.investment', 4],
    [small().replace('1000 €', '1000 € ± 120 %'), 'E_DOUBT', 'alternatives.loop.investment', 4],
    [small().replace('1000 €', 'much'), 'E_NUMBER', 'alternatives.loop.investment', 4],
    [small().replace('1000 €', '[1]'), 'E_TYPE', 'alternatives.loop.investment', 4],
    [small().replace('investment: 1000 €', 'file: a.yaml, variation: b'), 'E_ONLY_ONE_OF', 'alternatives.loop', 4],
    [small().replace('investment: 1000 €', 'invest: 1000 €'), 'E_UNKNOWN_KEY', 'alternatives.loop.invest', 4],
    [small(MONEY.replace('38 €/h', '38 $/h')), 'E_CURRENCY', 'money.wage', 5],
    [small(MONEY.replace('38 €/h', '38 €')), 'E_UNIT_UNKNOWN', 'money.wage', 5],
    [small(MONEY.replace('38 €/h', '38,5 €/h')), 'E_DECIMAL_COMMA', 'money.wage', 5],
    [small(MONEY.replace('crew: 8, ', '')), 'E_MISSING', 'money.crew', 5],
    [small(MONEY.replace('crew: 8', 'crew: 8.5')), 'E_NOT_WHOLE', 'money.crew', 5],
    [small(MONEY.replace('crew: 8', 'crew: 0')), 'E_TOO_SMALL', 'money.crew', 5],
    [small(MONEY.replace('10 %', '10')), 'E_UNIT_MISSING', 'money.interest', 5],
    [small(MONEY.replace('230', '400')), 'E_TOO_BIG', 'money.daysPerYear', 5],
    [small('screening: { people: wrking }'), 'E_CHOICE', 'screening.people', 5],
    [small('screening: { mass: 115 N }'), 'E_UNIT_UNKNOWN', 'screening.mass', 5],
    [small('screening: { mass: 0 kg }'), 'E_ZERO', 'screening.mass', 5],
    [small('screening: { walks: { wire: { perUnit: 4 m } } }'), 'E_MISSING', 'screening.walks.wire.measured', 5],
    [small('screening: { walks: { wire: { perUnit: 4, measured: tape } } }'), 'E_UNIT_MISSING', 'screening.walks.wire.perUnit', 5],
    [small('screening: { walks: { wire: 4 m } }'), 'E_TYPE', 'screening.walks.wire', 5],
    [small('screening: { lifts: [18 kg] }'), 'E_TYPE', 'screening.lifts', 5],
    [small('screening: { ownCopy: { startFroce: { value: 1 N, source: a } } }'), 'E_UNKNOWN_KEY', 'screening.ownCopy.startFroce', 5],
    [small('screening: { ownCopy: { startForce: { value: 1 N } } }'), 'E_MISSING', 'screening.ownCopy.startForce.source', 5],
    [small('screening: { voltage: 24 }'), 'E_UNIT_MISSING', 'screening.voltage', 5],
    [small('criteria: { weigh: { a: { weight: 90, one: 1, five: 2, from: output } } }'), 'E_WEIGHTS', 'criteria.weigh', 5],
    [
      small('criteria: { weigh: { a: { weight: 100, one: bad, five: good, scores: { now: 6, loop: 1 } } } }'),
      'E_SCORE',
      'criteria.weigh.a.scores.now',
      5,
    ],
    [
      small('criteria: { weigh: { a: { weight: 100, one: bad, five: good, scores: { now: 5 } } } }'),
      'E_MISSING',
      'criteria.weigh.a.scores',
      5,
    ],
    [
      small('criteria: { weigh: { a: { weight: 100, one: bad, five: good, scores: { now: 5, loop: 1, lop: 2 } } } }'),
      'E_NOT_NAMED',
      'criteria.weigh.a.scores.lop',
      5,
    ],
    [small('criteria: { weigh: { a: { weight: 100, one: 1, five: 1, from: output } } }'), 'E_ANCHORS', 'criteria.weigh.a', 5],
    [
      small('criteria: { weigh: { a: { weight: 100, one: 1, five: 2, from: output, scores: { now: 1, loop: 1 } } } }'),
      'E_SCORE_COMPUTED',
      'criteria.weigh.a.scores',
      5,
    ],
    [small('acceptance: { of: lop, lasts: 4 h }'), 'E_NOT_NAMED', 'acceptance.of', 5],
    [small('acceptance: { share: 90 % }'), 'E_MISSING', 'acceptance.lasts', 5],
    [small('promise: { shiftsPerDay: 2 }'), 'E_MISSING', 'promise.until', 5],
    [small('promise: { until: x }'), 'E_MISSING', 'promise', 5],
    [small('promise: { until: x, shifts: { early: {} } }'), 'E_TOO_FEW', 'promise.shifts', 5],
    [small('promise: { until: x, shiftsPerDay: 2, shifts: { early: {}, late: {} } }'), 'E_ONLY_ONE_OF', 'promise.shiftsPerDay', 5],
    [small('promise: { until: x, shifts: { early: { daysPerWeek: 0 }, late: } }'), 'E_TOO_SMALL', 'promise.shifts.early.daysPerWeek', 5],
  ])('%#: $1', (text, code, path, line) => {
    expect(codes(text)).toEqual([[code, path, line]])
    expect(readDecision(text).decision).toBeNull()
  })
  test('quantities of scenarios keep their own findings, with the column', () => {
    const [problem] = readDecision(small('screening: { heights: { wiring: { height: 950 mn, work: light } } }')).problems
    expect(problem).toMatchObject({ code: 'E_UNIT_UNKNOWN', path: 'screening.heights.wiring.height', line: 5, column: 47 })
  })
  test('all at once, in file order, and the text shows the right form', () => {
    const text = small(MONEY.replace('38 €/h', '38,5 €/h').replace('crew: 8', 'crew: 0')).replace('today: now', 'today: nobody')
    const { problems } = readDecision(text)
    expect(problems.map(({ code }) => code)).toEqual(['E_NOT_NAMED', 'E_DECIMAL_COMMA', 'E_TOO_SMALL'])
    expect(formatProblems(problems, text, 'a.decision.yaml')).toContain('write "38.5 €/h"')
  })
  test('no YAML, and no map', () => {
    expect(readDecision('a: [1').decision).toBeNull()
    expect(readDecision('').problems).toHaveLength(1)
    expect(readDecision('- 1').problems).toHaveLength(1)
  })
})

test('weights that sum to something else are told beside other problems of the section', () => {
  const text = small('criteria: { mustHaves: { a: { planMetIn: 150 % } }, weigh: { x: { weight: 90, from: output, one: 1, five: 2 } } }')
  expect(codes(text).map(([code]) => code)).toEqual(['E_TOO_BIG', 'E_WEIGHTS'])
})

test('an amount in the writing of another country is mended to what it means, words are given as a choice', () => {
  const fixes = (text: string): string[] => readDecision(text).problems.map(({ fix }) => fix)
  expect(fixes(small().replace('1000 €', '1000 € +- 5 %'))[0]).toBe('write it like "410000 € ± 20 %"')
  expect(fixes(small().replace('1000 €', '1000 € +/- 5 %'))).toEqual(fixes(small().replace('1000 €', '1000 € ± 5 %')))
  expect(fixes(small().replace('1000 €', '"410.000,50 €"'))[0]).toContain('write "410000.50 €"')
  expect(fixes(small().replace('1000 €', '"410,000.50 €"'))[0]).toContain('write "410000.50 €"')
  expect(fixes(small('screening: { mass: 1 kg, people: standing }'))[0]).toMatch(/ or /)
})

test('a scenario in its place is told as that, and nothing else', () => {
  expect(codes('format: 1\nname: a\nplan: 3 per shift\nstations: {}\n')).toEqual([['E_SCENARIO', 'stations', 4]])
})
