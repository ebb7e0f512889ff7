import { readFileSync } from 'node:fs'
import { type LineSpec, PLAIN_PATH, PLAIN_STATION, PLAIN_ZONE, simulate } from '@loopwright/line'
import { law } from '@loopwright/line/bounds'
import { distributionMean } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import type { ScenarioNotes } from './problems/notes.ts'
import { readScenario } from './read.ts'
import type { Scenario } from './scenario.ts'

function read(name: string): { scenario: Scenario; line: LineSpec; notes: ScenarioNotes } {
  const text = readFileSync(new URL(`../../../scenarios/${name}.yaml`, import.meta.url), 'utf8')
  const { scenario, notes } = readScenario(text)
  return { scenario: scenario!, line: scenario!.line, notes: notes! }
}

describe('outdoor-unit base line: the numbers of its description, digit by digit', () => {
  const { scenario, line, notes } = read('outdoor-unit-base-line')
  const CORNERS = [8, 10, 19, 21]

  test('22 zones of 1.5 m in one loop, four of them transfers that are no place to wait', () => {
    expect(line.zones.map((zone) => zone.name)).toEqual(Array.from({ length: 22 }, (_, i) => `Z${String(i + 1).padStart(2, '0')}`))
    line.zones.forEach((zone, i) => {
      const corner = CORNERS.includes(i)
      expect(zone).toEqual({
        ...PLAIN_ZONE,
        name: zone.name,
        lengthMetres: 1.5,
        sensorBeforeStopMetres: corner ? 0 : 0.078125,
        release: 'single',
        transfer: corner ? { liftSeconds: 2, lowerSeconds: 1.6, enterOnlyIfExitClear: true } : null,
      })
    })
    expect(notes.storageZones).toBe(18)
  })

  test('22 paths at 0.25 m/s and 0.4 m/s²; into a corner low, out of it high; sideways along the short sides', () => {
    line.paths.forEach((path, i) => {
      expect(path).toEqual({
        ...PLAIN_PATH,
        from: i,
        to: (i + 1) % 22,
        distanceMetres: 1.5,
        speedMetresPerSecond: 0.25,
        accelerationMetresPerSecondSquared: 0.4,
        across: [8, 9, 19, 20].includes(i),
        fromPosition: CORNERS.includes(i) ? 'high' : 'low',
        toPosition: 'low',
        moveSeconds: null,
        clearSeconds: null,
      })
    })
    expect(line.reactionSeconds).toBe(0.15)
    expect(line.carriers).toEqual({ count: 12, lengthMetres: 1.2, widthMetres: 1.2, start: 'spread' })
  })

  test('16 variants, in written order with the last option fastest, and their shares', () => {
    const shares = [
      ['small', 0.224, 0.096, 0.056, 0.024],
      ['medium', 0.126, 0.054, 0.084, 0.036],
      ['large', 0.07, 0.03, 0.07, 0.03],
      ['coastal', 0.028, 0.012, 0.042, 0.018],
    ] as const
    const names = shares.flatMap(([name]) => [name, `${name} + quietKit`, `${name} + coldKit`, `${name} + coldKit + quietKit`])
    expect(line.variants).toEqual(names)
    expect(line.mix).toEqual({ kind: 'random', shares: shares.flatMap(([, ...four]) => four) })
  })

  test('seven stations with one lognormal per variant: mean of the table plus option, spread of the time itself', () => {
    type Row = [
      name: string,
      title: string,
      zone: number,
      duty: 'load' | 'work' | 'unload',
      task: string,
      cv: number,
      means: number[],
      option: string | null,
      adds: number,
    ]
    const rows: Row[] = [
      ['S1', 'Load', 1, 'load', 'setBasePan', 0.1, [38, 38, 44, 48], null, 0],
      ['S2', 'Refrigerant parts', 3, 'work', 'fitPipes', 0.12, [56, 58, 66, 72], null, 0],
      ['S3', 'Joining', 6, 'work', 'join', 0.12, [54, 58, 64, 70], null, 0],
      ['S4', 'Wiring', 12, 'work', 'wire', 0.15, [50, 52, 58, 64], 'coldKit', 16],
      ['S5', 'Fan deck and casing', 14, 'work', 'fitFanDeck', 0.12, [46, 50, 56, 62], 'quietKit', 18],
      ['S6', 'Tightness test', 16, 'work', 'test', 0.02, [60, 60, 66, 66], null, 0],
      ['S7', 'Unload', 18, 'unload', 'takeOff', 0.1, [36, 36, 42, 46], null, 0],
    ]
    expect(line.tasks).toEqual(rows.map((row) => row[4]))
    rows.forEach(([name, title, zone, duty, , cv, means, option, adds], i) => {
      const seconds = line.variants.map((variant, v) => ({
        kind: 'lognormal',
        mean: means[v >> 2]! + (option !== null && variant.includes(option) ? adds : 0),
        cv,
      }))
      expect(line.stations[i]).toEqual({
        name,
        title,
        zone,
        unload: null,
        load: null,
        work: null,
        [duty]: [{ task: i, seconds }],
        releaseSeconds: { kind: 'constant', value: 2 },
        ...PLAIN_STATION,
      })
    })
    const means = notes.stations.map((station) => station.meanWorkSeconds)
    expect(means).toEqual([40.2, 60.2, 58.8, 59.36, 56.2, 61.8, 38.2])
    expect(means.reduce((sum, mean) => sum + mean)).toBeCloseTo(374.76, 9)
  })

  test('breakdowns and short stops, each with its own name, clock, times', () => {
    const found = line.breakdowns.map((one) => [one.name, one.part.kind, distributionMean(one.timeToFailureSeconds), one.repairSeconds])
    const repair = (minutes: number) => ({ kind: 'lognormal', mean: 60 * minutes, cv: 0.6583 })
    const short = { kind: 'exponential', mean: 25 }
    expect(found).toEqual([
      ['pipeTool', 'station', 240 * 60, repair(4)],
      ['joiningTool', 'station', 180 * 60, repair(5)],
      ['testFault', 'station', 90 * 60, repair(5)],
      ...['Z09', 'Z11', 'Z20', 'Z22'].map((zone) => [`transferFault ${zone}`, 'transfer', 4628.6, repair(6)]),
      ...notes.stations.map((station) => [
        `shortStop ${station.name}`,
        'station',
        Number((station.meanWorkSeconds / 0.015).toPrecision(12)),
        short,
      ]),
    ])
    const printed = [2680, 4013.3, 3920, 3957.3, 3746.7, 4120, 2546.7]
    notes.shortStops.forEach((stop, i) => {
      expect(stop.meanTimeToFailureSeconds).toBeCloseTo(printed[i]!, 1)
    })
    expect(new Set(line.breakdowns.map((one) => one.clock))).toEqual(new Set(['operating']))
    expect(line.breakdowns.every((one) => one.timeToFailureSeconds.kind === 'exponential')).toBe(true)
  })

  test('two shifts of 500 min, breaks in both, the second one counts: net 450 min, takt 84.375 s', () => {
    const inShift = [
      [7200, 600],
      [15_000, 1800],
      [23_400, 600],
    ] as const
    expect(line.breaks).toEqual(
      [0, 30_000].flatMap((shift) => inShift.map(([after, lengthSeconds]) => ({ startSeconds: shift + after, lengthSeconds }))),
    )
    expect(line.window).toEqual({ warmupSeconds: 30_000, endSeconds: 60_000 })
    expect(line.conveyorDuringBreaks).toBe(true)
    expect(scenario.calendar).toEqual({ judged: 'second shift', shifts: 1, grossSeconds: 30_000, netSeconds: 27_000, taktSeconds: 84.375 })
    expect(scenario.plan).toEqual({ units: 320, per: 'shift', unitsPerWindow: 320 })
    expect(scenario.layout.turns).toEqual(line.zones.map((_, i) => (CORNERS.includes(i) ? 'right' : null)))
  })
})

describe('ten-zone learning loop: what its comments say', () => {
  const { line, notes } = read('ten-zone-learning-loop')

  test('the three terms of the law', () => {
    expect(notes.stations.map((station) => station.meanWorkSeconds)).toEqual([20, 30, 16])
    const found = law(line)
    expect([found.lapSeconds, found.exchangeSeconds, found.holeLapSeconds]).toEqual([146, 44.125, 61.25])
  })

  test.each([
    [1, 146],
    [3, 146 / 3],
    [4, 44.125],
    [8, 44.125],
    [9, 61.25],
  ])('%d carriers: one unit every %d s, simulated', (count, secondsPerUnit) => {
    const result = simulate({ ...line, carriers: { ...line.carriers, count } }, { seed: 'law', replication: 0 })
    expect(Math.abs(result.output - 28_800 / secondsPerUnit)).toBeLessThanOrEqual(count)
  })
})

test('loop without corners: the kinds it shows', () => {
  const { scenario, line } = read('loop-without-corners')
  expect(line.zones.some((zone) => zone.transfer !== null)).toBe(false)
  expect(scenario.layout.turns.filter((turn) => turn === 'right')).toHaveLength(4)
  expect(line.mix).toEqual({ kind: 'levelled', shares: [3, 2] })
  expect(line.stations[3]).toMatchObject({ operatorsNeeded: 0, worksInBreaks: true })
  expect(line.stations[4]?.work?.[0]?.seconds).toEqual([null, { kind: 'lognormal', mean: 30, cv: 0.2 }])
  expect(line.breakdowns.map((one) => one.part.kind)).toEqual(['station', 'section', 'station', 'station', 'station'])
  expect(scenario.calendar).toMatchObject({ judged: 'late', netSeconds: 27_000, taktSeconds: 80 })
  const result = simulate(line, { seed: 'x', replication: 0 })
  expect(result.output).toBeGreaterThan(250)
})
