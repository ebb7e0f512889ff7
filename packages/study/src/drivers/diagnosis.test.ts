/** What is named must be right where it is known what limits: lines whose constraint is clear by their times alone. */
import { type LineSpec, loopLine } from '@loopwright/line'
import { lineLimits } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { diagnose } from './diagnosis.ts'
import { findDrivers } from './findDrivers.ts'
import { unitsOf, withRunner } from '../runs/runner.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { stateShares } from './stationStates.ts'

const constant = (value: number) => ({ kind: 'constant', value }) as const
const base = stationLoop({ breaks: [], carriers: { ...stationLoop().carriers, count: 4 } })
const stations = (change: (station: LineSpec['stations'][number], index: number) => Partial<LineSpec['stations'][number]>) =>
  base.stations.map((station, index) => ({ ...station, ...change(station, index) }))
const supply = { name: 'supply', arrivals: { kind: 'every', seconds: { kind: 'exponential', mean: 60 } }, queueLimit: null } as const

/** Station B works 20 s, exchange 24 s; Load 8 s, Unload 6 s. */
const LINES: Readonly<Record<string, readonly [LineSpec, string]>> = {
  'a slow station': [
    { ...base, stations: stations(({ work }) => (work === null ? {} : { work: [{ task: 1, seconds: [constant(40)] }] })) },
    'B Fit',
  ],
  'one person for all': [{ ...base, operators: [{ name: 'Ann', stations: [0, 1, 2], start: 0 }] }, 'Ann'],
  'rare arrivals': [{ ...base, supply }, 'arrivals'],
  'a slow receiver': [
    { ...base, stations: stations(({ unload }) => (unload === null ? {} : { receiver: { cycleSeconds: constant(60), queue: 0 } })) },
    'receiver at C Unload',
  ],
  'one carrier': [{ ...base, carriers: { ...base.carriers, count: 1 } }, '1 carrier'],
}

async function run(line: LineSpec) {
  const [rows] = await withRunner({ seed: 'd', workers: 0 }, null, (runner) => runner.run([line], { from: 0, to: 4 }))
  const units = unitsOf(rows!)
  return { shares: stateShares(line, rows!), units: units.reduce((sum, each) => sum + each, 0) / units.length }
}

test.each(Object.entries(LINES))('%s, from the run alone', async (_, [line, name]) => {
  const { limitedBy, evidence } = diagnose({ line, ...(await run(line)) })
  expect(limitedBy?.name).toBe(name)
  expect(evidence.map(({ source }) => source).sort()).toEqual(['limit', 'states'])
})

test.each(Object.entries(LINES))('%s, by changes too, and all agree', async (what, [line, name]) => {
  const { diagnosis, wholeChanges } = await findDrivers(line, { replications: 4 }, { seed: 'd', workers: 0 })
  expect(diagnosis!.limitedBy?.name).toBe(name)
  expect(diagnosis!.agrees).toBe(true)
  if (what === 'one person for all') expect(wholeChanges[0]).toMatchObject({ kind: 'operator', name: 'Ann', step: 1 })
})

test('states that lead are those of the run: the share that is told stands there', async () => {
  const [line] = LINES['one person for all']!
  const { shares, units } = await run(line)
  const states = diagnose({ line, shares, units }).evidence.find(({ source }) => source === 'states')!
  if (states.source !== 'states' || states.state === 'busy') throw new Error('it waits')
  expect(states.state).toBe('waiting for operator')
  expect(states.share).toBe(Math.max(...shares.map((each) => each['waiting for operator'])))
})

test('before anything runs the slowest limit is named; nothing known, nothing named; other limits disagree', async () => {
  expect(diagnose({ line: base, shares: null, units: null }).limitedBy?.name).toBe('B Fit')
  expect(diagnose({ line: base, shares: null, units: null, limits: [] })).toEqual({
    limitedBy: null,
    evidence: [],
    agrees: false,
    asTight: [],
  })
  const { shares, units } = await run(base)
  const wrong = lineLimits({ ...base, supply })
  expect(diagnose({ line: base, shares, units, limits: wrong }).agrees).toBe(false)
})

/** Three stations of exponential times, room for one carrier between them: they wait for each other, and neither a carrier more nor one fewer helps. */
test('stations that wait for each other by chance are short of neither carriers nor room', async () => {
  const chance = { kind: 'exponential', mean: 240 } as const
  const { spec } = loopLine({
    zones: 8,
    zoneLength: 1,
    drive: { speed: 1 },
    carriers: { count: 5, length: 0.8 },
    stations: {
      load: { zone: 'Z01', unload: 5, load: 5 },
      A: { zone: 'Z03', work: chance },
      B: { zone: 'Z05', work: chance },
      C: { zone: 'Z07', work: chance },
    },
    warmup: 7200,
    end: 16 * 3600,
  })
  const at = async (count: number) => run({ ...spec, carriers: { ...spec.carriers, count } })
  const [fewer, own, more] = [await at(4), await at(5), await at(6)]
  expect(Math.max(fewer.units, more.units)).toBeLessThan(1.02 * own.units)
  const { limitedBy, evidence } = diagnose({ line: spec, ...own })
  expect(evidence.find(({ source }) => source === 'states')).toMatchObject({ named: null })
  expect(limitedBy?.kind).toBe('station')
})

test('a list that has run out is what limits, whatever a carrier more or fewer holds at its end', async () => {
  const { spec } = loopLine({
    zones: 8,
    zoneLength: 1,
    drive: { speed: 0.5 },
    carriers: { count: 3, length: 0.8 },
    products: { variants: ['a', 'b'], mix: { kind: 'list', sequence: ['a', 'b', 'a', 'b', 'a', 'b'] } },
    stations: { load: { zone: 'Z01', unload: 5, load: 5 }, A: { zone: 'Z04', work: 60 } },
    end: 3600,
  })
  const { diagnosis, wholeChanges } = await findDrivers(spec, { replications: 2 }, { seed: 'd', workers: 0 })
  expect(wholeChanges.some(({ kind, difference }) => kind === 'carrier' && difference.mean > 0)).toBe(true)
  expect(diagnosis?.limitedBy?.kind).toBe('list')
})
