import { readFileSync } from 'node:fs'
import { fileValues, readScenarioWith } from '@loopwright/scenario'
import { distributionMean } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { liveChanges } from './liveChanges.ts'
import { liveInputs } from './liveInputs.ts'

const file = (name: string): string => readFileSync(new URL(`../../../../scenarios/${name}.yaml`, import.meta.url), 'utf8')
const demo = file('outdoor-unit-base-line')
const open = file('test-and-repair-line')
const inputs = liveInputs(demo)
const input = (key: string, of = inputs) => of.find((each) => each.key === key)!

function changed(values: Readonly<Record<string, string>>, text = demo, of = liveInputs(text)) {
  const told = liveChanges(fileValues(text), of, values)
  if (told.kind === 'fault') throw new Error(told.message)
  return readScenarioWith(text, told.changes)
}

describe('what the demo offers', () => {
  test('carriers, speed, release, plan; time and zone of each station; stops; shares', () => {
    expect(inputs.map(({ key }) => key)).toEqual([
      ...['carriers', 'speed', 'release', 'plan'],
      ...[1, 2, 3, 4, 5, 6, 7].flatMap((number) => [`S${number}.time`, `S${number}.zone`]),
      ...['pipeTool', 'joiningTool', 'testFault', 'transferFault', 'shortStop'].flatMap((stop) => [`${stop}.rare`, `${stop}.long`]),
      ...['small', 'medium', 'large', 'coastal'].map((variant) => `share.${variant}`),
    ])
  })

  test('each says what the file says, between the ends of its slider', () => {
    expect(input('carriers')).toMatchObject({ file: '12', shown: { from: 1, to: 18, step: 1 } })
    expect(input('speed').file).toBe('15 m/min')
    expect(input('plan').file).toBe('320 per shift')
    expect(input('shortStop.rare').file).toBe('1.5 per 100 cycles')
    expect(input('testFault.rare').file).toBe('90 min')
    expect(input('testFault.long').file).toBe('5 min')
    expect(input('shortStop.long').file).toBe('25 s')
    for (const { key, file: value, shown } of inputs) {
      if (shown.kind === 'choice')
        expect(
          shown.options.map((option) => option.value),
          key,
        ).toContain(value)
      else {
        const number = Number.parseFloat(value)
        expect(number, key).toBeGreaterThanOrEqual(shown.from)
        expect(number, key).toBeLessThanOrEqual(shown.to)
        expect(value.endsWith(shown.unit), key).toBe(true)
      }
    }
  })

  test('what is not touched changes nothing, and the value of the file is no change', () => {
    expect(liveChanges(fileValues(demo), inputs, {})).toEqual({ kind: 'changes', changes: {} })
    expect(liveChanges(fileValues(demo), inputs, Object.fromEntries(inputs.map(({ key, file: value }) => [key, value])))).toEqual({
      kind: 'changes',
      changes: {},
    })
  })
})

describe('lines that something else limits', () => {
  test('arrivals, a receiver, operators and the release that the file leaves to the default', () => {
    const text = open.replace('supply: { every: exponential 90 s, queue: 6 }', 'supply: { every: exponential 200 h }')
    const of = liveInputs(text)
    expect(input('supply', of)).toMatchObject({ file: '200 h', shown: { from: 100, to: 400, unit: 'h' } })
    expect(input('unload.receiver', of).file).toBe('45 s')
    const set = { supply: '2 min', 'unload.receiver': '60 s', release: 'train', 'operator.right': '2' }
    const { line } = changed(set, text, of).scenario!
    expect(line.supply.arrivals).toMatchObject({ kind: 'every', seconds: { kind: 'exponential', mean: expect.closeTo(120, 3) } })
    expect(distributionMean(line.stations.at(-1)!.receiver!.cycleSeconds)).toBeCloseTo(60, 4)
    expect(line.zones[0]!.release).toBe('train')
    expect(line.operators).toHaveLength(3)
  })

  test('a stop that comes once in weeks is told in hours, and its slider stands where the file is', () => {
    const rare = liveInputs(file('loop-without-corners')).find(({ key }) => key === 'power.rare')!
    expect(rare).toMatchObject({ file: '200 h', shown: { from: 50, to: 800, unit: 'h' } })
  })
})

describe('a change does what its label says', () => {
  test.each(inputs.filter(({ key }) => key.endsWith('.time')).map(({ key }) => key))(
    '%s: the mean of the station is the one set, options too',
    (key) => {
      const { notes } = changed({ [key]: '50 s' })
      expect(notes!.stations.find(({ name }) => `${name}.time` === key)!.meanWorkSeconds).toBeCloseTo(50, 3)
    },
  )

  test('a stop is as rare and as long as was set, in seconds or minutes', () => {
    const { scenario } = changed({ 'testFault.rare': '3 h', 'testFault.long': '90 s', 'shortStop.rare': '3 per 100 cycles' })
    const source = scenario!.line.breakdowns.find(({ name }) => name.startsWith('testFault'))!
    expect(distributionMean(source.timeToFailureSeconds)).toBeCloseTo(10_800, 2)
    expect(distributionMean(source.repairSeconds)).toBeCloseTo(90, 4)
    expect(changed({ 'shortStop.rare': '3 per 100 cycles' }).notes!.shortStops[0]!.chancePerCycle).toBe(0.03)
  })

  test('carriers, speed, release, plan and a zone stand in the scenario', () => {
    const { scenario } = changed({ carriers: '14', speed: '18 m/min', release: 'train', plan: '350 per shift', 'S5.zone': 'Z14' })
    const { line, plan } = scenario!
    expect(line.carriers.count).toBe(14)
    expect(line.paths[0]!.speedMetresPerSecond).toBe(0.3)
    expect(line.zones[0]!.release).toBe('train')
    expect(plan!.units).toBe(350)
    expect(line.zones[line.stations[4]!.zone]!.name).toBe('Z14')
  })

  test('a share moves the others in their proportions; two set shares stay', () => {
    const told = liveChanges(fileValues(demo), inputs, { 'share.small': '55 %', 'share.coastal': '15' })
    expect(told).toEqual({
      kind: 'changes',
      changes: { 'products.variants': { small: '55 %', medium: '18 %', large: '12 %', coastal: '15 %' } },
    })
    expect(changed({ 'share.small': '0 %' }).problems.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(liveChanges(fileValues(demo), inputs, { 'share.small': '80 %', 'share.medium': '40 %' })).toMatchObject({
      kind: 'fault',
      key: 'share',
    })
  })

  test('a path of the file itself, in front of which stands an equals sign', () => {
    expect(
      changed({ '=stops.testFault.clock': 'calendar' }).scenario!.line.breakdowns.find(({ name }) => name.startsWith('testFault'))!.clock,
    ).toBe('calendar')
  })
})

describe('an open line with operators', () => {
  const of = liveInputs(open)
  test('offers its people, and has as many of them as are wanted', () => {
    expect(of.filter(({ group }) => group === 'Operators').map(({ label }) => label)).toEqual(['People like left', 'People like right'])
    const names = (values: Readonly<Record<string, string>>) => changed(values, open, of).scenario!.line.operators.map(({ name }) => name)
    expect(names({ 'operator.left': '3' })).toEqual(['left', 'left-2', 'left-3', 'right'])
    expect(names({ 'operator.right': '0' })).toEqual(['left'])
  })
  test('its stops, whose place is one station or all of the line', () => {
    expect(of.filter(({ group }) => group === 'Stops').map(({ key, file: value }) => [key, value])).toEqual([
      ['jam.rare', '60 min'],
      ['jam.long', '4 min'],
      ['belt.rare', '180 min'],
      ['belt.long', '5 min'],
    ])
  })
})

test('what cannot be read is a fault that names the field; what can but is wrong is a problem of the scenario', () => {
  expect(liveChanges(fileValues(demo), inputs, { 'S6.time': '55' })).toMatchObject({
    kind: 'fault',
    key: 'S6.time',
    fix: expect.stringContaining('55 s'),
  })
  expect(liveChanges(fileValues(demo), inputs, { 'S6.time': '' })).toMatchObject({ kind: 'fault', key: 'S6.time' })
  expect(liveChanges(fileValues(open), liveInputs(open), { 'operator.left': 'two' })).toMatchObject({ kind: 'fault', key: 'operator.left' })
  const { scenario, problems } = changed({ carriers: '40' })
  expect(scenario).toBeNull()
  expect(problems[0]!.change).toBe('carriers.count=40')
})

test('a file with errors, or one that keeps its times elsewhere, offers less', () => {
  expect(liveInputs('format: 1')).toEqual([])
})
