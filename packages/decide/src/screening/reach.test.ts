import { describe, expect, test } from 'vitest'
import { screenedLine as figures } from '../../../../tests/helpers/screenedLine.ts'
import { deviceFindings, gapFindings, separationDistance, speedFindings } from './reach.ts'
import { NOTHING_GIVEN } from './screening.ts'

const millimetres = (device: Parameters<typeof separationDistance>[0]) => Math.round(1000 * separationDistance(device)!.distance)
const curtain = (stopSeconds: number, resolution: number | null) => ({ kind: 'curtain', stopSeconds, resolution, height: null }) as const

describe('separation distance, ISO 13855 (a second-hand quote of an earlier edition)', () => {
  test('the worked example: 0.32 s and 14 mm give 640 mm, anew with 1600 mm/s 512 mm', () => {
    expect(millimetres(curtain(0.32, 0.014))).toBe(512)
  })
  test('up to 500 mm the fast approach counts, and just beyond never less than 500', () => {
    expect(millimetres(curtain(0.2, 0.014))).toBe(400)
    // 2000 · 0.26 = 520 → 1600 · 0.26 = 416, at least 500
    expect(millimetres(curtain(0.26, 0.014))).toBe(500)
  })
  test('8 mm for each of the resolution above 14; 100 mm at least (from memory)', () => {
    expect(millimetres(curtain(0.1, 0.03))).toBe(200 + 8 * 16)
    expect(millimetres(curtain(0.01, 0.014))).toBe(100)
  })
  test('coarser than 40 mm, and scanners (from memory)', () => {
    expect(millimetres(curtain(0.1, 0.07))).toBe(160 + 850)
    expect(millimetres({ kind: 'scanner', stopSeconds: 0.5, resolution: null, height: 0.3 })).toBe(800 + 1080)
    expect(millimetres({ kind: 'scanner', stopSeconds: 0.5, resolution: null, height: 1 })).toBe(800 + 850)
  })
  test('without resolution or height there is none', () => {
    expect(separationDistance(curtain(0.1, null))).toBeNull()
    expect(separationDistance({ kind: 'scanner', stopSeconds: 1, resolution: null, height: null })).toBeNull()
  })
  test('a device that stands too near is above the guidance value, once second-hand quotes are turned on', () => {
    const devices = [{ place: 'S4', ...curtain(0.32, 0.014), distance: 0.45 }]
    expect(deviceFindings({ ...NOTHING_GIVEN, devices })[0]).toMatchObject({ word: 'not checked', guidance: { value: 0.512 } })
    expect(deviceFindings({ ...NOTHING_GIVEN, devices, secondHand: true })[0]!.word).toBe('above guidance value')
    const own = [{ limit: 'distance', value: 0.4, source: 'my copy' }] as const
    expect(deviceFindings({ ...NOTHING_GIVEN, devices, ownCopy: own })[0]!.word).toBe('within guidance value')
  })
})

describe('gaps', () => {
  test('a named gap against the least one for the part of the body', () => {
    const gaps = [{ place: 'T1', width: 0.08, part: 'hand' }] as const
    expect(gapFindings({ ...NOTHING_GIVEN, gaps, secondHand: true }, figures)[0]).toMatchObject({
      word: 'above guidance value',
      guidance: { value: 0.1 },
    })
    expect(gapFindings({ ...NOTHING_GIVEN, gaps }, figures)[0]!.word).toBe('not checked')
  })
  test('carriers that stand less than 500 mm apart are flagged, and not beyond', () => {
    const flagged = gapFindings(NOTHING_GIVEN, figures)
    expect(flagged).toHaveLength(1)
    expect(flagged[0]!.assumptions[0]).toContain('possible crushing place, look closer')
    expect(gapFindings(NOTHING_GIVEN, { ...figures, standingGap: 0.5 })).toEqual([])
  })
})

describe('speed, EN 619:2022 (second-hand)', () => {
  const word = (mass: number | null, speed: number, people: 'working' | 'passing' | null, secondHand = true) =>
    speedFindings({ ...NOTHING_GIVEN, mass, people, secondHand }, { ...figures, speed })[0]!.word
  test.each([
    [115, 0.5, 0.6],
    [100, 1.0, 1.0],
    [50, 1.5, 2.0],
    [35, 2.0, 2.5],
  ])('%d kg: %d m/s where people work, %d where they pass', (mass, working, passing) => {
    expect([word(mass, working, 'working'), word(mass, working + 0.01, 'working')]).toEqual([
      'within guidance value',
      'above guidance value',
    ])
    expect([word(mass, passing, 'passing'), word(mass, passing + 0.01, 'passing')]).toEqual([
      'within guidance value',
      'above guidance value',
    ])
  })
  test('off by default, and not checked without mass or place', () => {
    expect([word(115, 0.25, 'working', false), word(null, 0.25, 'working'), word(115, 0.25, null)]).toEqual(Array(3).fill('not checked'))
    expect(speedFindings(NOTHING_GIVEN, { ...figures, speed: null })).toEqual([])
  })
})
