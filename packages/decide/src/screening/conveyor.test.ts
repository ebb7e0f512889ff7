import { expect, test } from 'vitest'
import { screenedLine as figures } from '../../../../tests/helpers/screenedLine.ts'
import { driveFindings, driveForce, loadFindings, otherFindings, sweptWidth, zoneFindings } from './conveyor.ts'
import { NOTHING_GIVEN } from './screening.ts'

const find = (list: readonly { id: string }[], id: string) => list.find((each) => each.id === id) as never

test('zone length and stopping: v²/2a + v·ε against the sensor', () => {
  const zone = { noseMargin: 0.1, rearMargin: 0.1 }
  const found = zoneFindings({ ...NOTHING_GIVEN, zone }, figures)
  expect(find(found, 'zone-length')).toMatchObject({ value: 1.5, word: 'within guidance value' })
  // 0.078125 + 0.0375 m are more than the 0.078125 m that the sensor leaves
  expect(find(found, 'stopping')).toMatchObject({ value: 0.078125 + 0.0375, word: 'above guidance value' })
  expect(find(zoneFindings(NOTHING_GIVEN, { ...figures, sensorBeforeStop: 0.12 }), 'stopping')).toMatchObject({
    word: 'within guidance value',
  })
})

test('drive: m·g·μ + n·f + m·a, and its power', () => {
  expect(driveForce(115, 0.03, 15, 1.2, 0.4)).toBeCloseTo(115 * 9.81 * 0.03 + 18 + 46, 9)
  const drive = {
    rollers: 15,
    idlerForce: 1.2,
    efficiency: 0.7,
    force: 90,
    power: 40,
    ratedMass: 150,
    startCurrent: 2.5,
    peakCurrent: 20,
    startTogether: 10,
  }
  const found = driveFindings({ ...NOTHING_GIVEN, mass: 115, drive }, figures)
  expect(find(found, 'drive-force')).toMatchObject({ word: 'above guidance value' })
  expect((find(found, 'drive-power') as { value: number }).value).toBeCloseTo((97.84 * 0.25) / 0.7, 1)
  expect(find(found, 'drive-mass')).toMatchObject({ word: 'within guidance value' })
  expect(find(found, 'start-current')).toMatchObject({ value: 25, word: 'above guidance value' })
})

test('slip at μ·g·φ, tipping at half of g·(base/2)/height', () => {
  const of = (acceleration: number) =>
    loadFindings(
      { ...NOTHING_GIVEN, load: { base: 0.6, centreHeight: 1.2, friction: 0.2, drivenShare: 0.5 } },
      { ...figures, acceleration },
    ).map(({ word }) => word)
  // 0.981 and 1.22625 m/s²
  expect(of(0.4)).toEqual(['within guidance value', 'within guidance value'])
  expect(of(1.1)).toEqual(['above guidance value', 'within guidance value'])
  expect(of(1.3)).toEqual(['above guidance value', 'above guidance value'])
})

test('curve: R 0.9 m, width 0.6 m, length 0.8 m sweep 0.652 m', () => {
  expect(sweptWidth(0.9, 0.6, 0.8)).toBeCloseTo(0.652, 3)
})

test('24 V is told for what it does not remove, without a verdict', () => {
  const [found] = otherFindings({ ...NOTHING_GIVEN, volts: 24 }, figures)
  expect(found).toMatchObject({ word: 'not checked', why: expect.stringContaining('not pinch, entanglement or falling loads') })
})
