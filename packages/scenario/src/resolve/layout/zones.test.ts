import { PLAIN_ZONE } from '@loopwright/line'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(...changes: [string, string][]) {
  const { scenario, problems, notes } = readScenario(scenarioText(...changes))
  return { zones: scenario?.line.zones ?? [], codes: problems.map((problem) => problem.code), notes }
}

test('own values by zone name go before what the drive says', () => {
  const { zones } = read(
    ['acceleration: 0.5 m/s²', 'acceleration: 0.5 m/s², release: train, sensorBeforeStop: 40 mm'],
    ['', 'zones: { Z03: { release: single, sensorBeforeStop: 0 m, length: 1.2 m } }'],
  )
  expect(zones[2]).toEqual({ ...PLAIN_ZONE, name: 'Z03', lengthMetres: 1.2, sensorBeforeStopMetres: 0, release: 'single', transfer: null })
  expect(zones[3]).toEqual({ ...PLAIN_ZONE, name: 'Z04', lengthMetres: 1, sensorBeforeStopMetres: 0.04, release: 'train', transfer: null })
})

test('a transfer has its own sensor, 0 where nothing is said, and is left by single release', () => {
  const corner = 'corners: { zones: [Z03, Z06], turn: left, lift: 1 s, lower: 800 ms }'
  const drive: [string, string] = ['acceleration: 0.5 m/s²', 'acceleration: 0.5 m/s², release: train, sensorBeforeStop: 40 mm']
  expect(read(drive, ['', corner]).zones[2]).toEqual({
    ...PLAIN_ZONE,
    name: 'Z03',
    lengthMetres: 1,
    sensorBeforeStopMetres: 0,
    release: 'single',
    transfer: { liftSeconds: 1, lowerSeconds: 0.8, enterOnlyIfExitClear: false },
  })
  expect(read(drive, ['', corner.replace('}', ', sensorBeforeStop: 10 mm }')]).zones[2]?.sensorBeforeStopMetres).toBe(0.01)
  expect(read(drive, ['', corner], ['', 'zones: { Z03: { sensorBeforeStop: 20 mm } }']).zones[2]?.sensorBeforeStopMetres).toBe(0.02)
})

test('a transfer may be written at its zone', () => {
  const { zones, codes } = read([
    '',
    'zones: { Z03: { transfer: { lift: 1 s, lower: 2 s, enterOnlyIfExitClear: true } }, Z06: { transfer: { lift: 1 s, lower: 2 s } } }',
  ])
  expect(codes).toEqual([])
  expect(zones[2]?.transfer).toEqual({ liftSeconds: 1, lowerSeconds: 2, enterOnlyIfExitClear: true })
})

test('names that the file does not give are told apart', () => {
  const { notes } = read([
    '10 zones of 1 m',
    '[3 × 1 m, { name: Z04, length: 1 m }, { name: buffer, length: 2 m }, { length: 1 m }, 4 × 1 m]',
  ])
  expect(notes?.zoneNames).toEqual(['Z01', 'Z02', 'Z03', 'Z04', 'buffer', 'Z06', 'Z07', 'Z08', 'Z09', 'Z10'])
  expect(notes?.generatedZoneNames).toEqual(['Z01', 'Z02', 'Z03', 'Z06', 'Z07', 'Z08', 'Z09', 'Z10'])
})

test('zones by name make one closed loop in written order', () => {
  const { zones, codes } = read(
    [
      'loop: 10 zones of 1 m',
      'zones: { "10": { length: 1 m }, "2": { length: 1 m }, a: { length: 1 m }, b: { length: 1 m }, c: { length: 1 m } }',
    ],
    ['Z01', '"10"'],
    ['Z04', 'a'],
    ['Z08', 'c'],
  )
  expect(codes).toEqual([])
  expect(zones.map((zone) => zone.name)).toEqual(['10', '2', 'a', 'b', 'c'])
})

test('a zone that is not in the loop and that no path leads to is an error', () => {
  expect(read(['', 'zones: { Z11: { length: 1 m } }']).codes).toEqual(['E_ZONE_BESIDE'])
})
