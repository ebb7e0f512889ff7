/** The section `screening` of a decision file. */
import { type BodyPart, OWN_LIMITS, type OwnLimit, type OwnLimitName, type ScreeningInputs } from '../screening/inputs.ts'
import { byName, type Field, group, number, optional, type Reader, required, text, whole, word } from './fields.ts'
import * as say from './messages.ts'
import { nearest } from '@loopwright/line/check'
import { joinPath } from '@loopwright/scenario/text'
import { own, quantity } from './quantities.ts'

const maybe = <T>(read: Reader<T>): Field<T | null> => optional<T | null>(read, null)
const PARTS: Readonly<Record<BodyPart, BodyPart>> = {
  body: 'body',
  head: 'head',
  leg: 'leg',
  foot: 'foot',
  toes: 'toes',
  arm: 'arm',
  hand: 'hand',
  finger: 'finger',
}
const coefficient = (example: string): Field<number> => required(number(0, 2), `a coefficient such as ${example}`)
const length = (example: string): Field<number> => required(quantity('length', 'zero'), `a length such as "${example}"`)

const OWN_UNITS: Readonly<Record<OwnLimitName, Reader<number>>> = {
  startForce: own('force'),
  keepForce: own('force'),
  actionsPerMinute: own('perMinute'),
  speed: quantity('speed'),
  gap: quantity('length'),
  distance: quantity('length'),
  walk: quantity('length'),
}

/** Limits by name, each in its own unit, each with its source. */
const ownCopy: Reader<readonly OwnLimit[]> = (at, reading) => {
  const limits: OwnLimit[] = []
  let good = true
  for (const { key, keyStart, keyEnd, value } of at.entries.values()) {
    const limit = OWN_LIMITS.find((name) => name === key)
    if (limit === undefined) {
      reading.report.addAt(keyStart, keyEnd - keyStart, joinPath(at.path, key), say.unknownKey(key, nearest(key, OWN_LIMITS), OWN_LIMITS))
      good = false
      continue
    }
    const found = group({
      value: required(OWN_UNITS[limit], 'the limit with its unit'),
      source: required(text, 'standard, edition and table that you read it in'),
    })(value, reading)
    if (found === undefined) good = false
    else limits.push({ limit, ...found })
  }
  if (at.kind !== 'map') return byName(text, 'limits')(at, reading) === undefined ? undefined : []
  return good ? limits : undefined
}

const push = group({
  rolling: coefficient('0.02'),
  starting: coefficient('0.03'),
  speed: required(quantity('speed'), 'a speed such as "15 m/min"'),
  within: required(quantity('duration'), 'a time such as "1 s"'),
  distance: maybe(quantity('length')),
  hands: maybe(word({ 'knuckle to shoulder': true, elsewhere: false })),
  floor: maybe(word({ even: true, uneven: false })),
  trapping: maybe(word({ none: true, possible: false })),
  perUnit: maybe(whole(0, 1000)),
})

const fields = group({
  secondHand: optional(word({ use: true, off: false }), false),
  fromMemory: optional(word({ use: true, off: false }), false),
  ownCopy: optional(ownCopy, []),
  mass: maybe(own('mass', { most: 1e6 })),
  people: maybe(word({ working: 'working', passing: 'passing' } as const)),
  push: maybe(push),
  heights: optional(
    byName(
      group({
        height: length('950 mm'),
        work: required(word({ precision: 'precision', light: 'light', heavy: 'heavy' } as const), '"precision", "light" or "heavy"'),
      }),
      'heights of the hands',
    ),
    [],
  ),
  gaps: optional(byName(group({ width: length('120 mm'), for: required(word(PARTS), 'a part of the body, such as "hand"') }), 'gaps'), []),
  devices: optional(
    byName(
      group({
        kind: required(word({ curtain: 'curtain', scanner: 'scanner' } as const), '"curtain" or "scanner"'),
        stops: required(quantity('duration'), 'the whole stopping time, such as "0.32 s"'),
        resolution: maybe(quantity('length')),
        height: maybe(quantity('length', 'zero')),
        distance: length('600 mm'),
      }),
      'protective devices',
    ),
    [],
  ),
  rollers: maybe(
    group({
      pitch: required(quantity('length'), 'a length such as "100 mm"'),
      diameter: maybe(quantity('length')),
      rating: maybe(own('mass')),
      bottom: optional(word({ stiff: false, soft: true }), false),
      bedGap: maybe(quantity('length', 'zero')),
      bedStep: maybe(quantity('length', 'zero')),
      width: maybe(quantity('length')),
    }),
  ),
  drive: maybe(
    group({
      rollers: required(whole(1, 10_000), 'driven rollers in a zone, such as 15'),
      idler: required(own('force', { least: 'zero' }), 'newtons that one idler takes, such as "1.2 N"'),
      efficiency: required(own('percent', { most: 1 }), 'a share such as "70 %"'),
      force: maybe(own('force')),
      power: maybe(own('power')),
      mass: maybe(own('mass')),
      startCurrent: maybe(own('current')),
      peakCurrent: maybe(own('current')),
      startTogether: maybe(whole(1, 10_000)),
    }),
  ),
  load: maybe(
    group({
      base: required(quantity('length'), 'a length such as "600 mm"'),
      centre: required(quantity('length'), 'a height such as "700 mm"'),
      friction: coefficient('0.25'),
      driven: optional(own('percent', { most: 1 }), 1),
    }),
  ),
  zone: maybe(group({ nose: length('50 mm'), rear: length('50 mm') })),
  curve: maybe(
    group({ innerRadius: required(quantity('length'), 'a length such as "0.9 m"'), width: required(quantity('length'), 'a length') }),
  ),
  voltage: maybe(own('voltage')),
  lifts: optional(byName(own('mass'), 'masses lifted'), []),
  walks: optional(
    byName(
      group({ perUnit: length('4 m'), measured: required(text, 'how it was measured, such as "tape on the floor, 20 units"') }),
      'ways walked for each unit',
    ),
    [],
  ),
})

export const readScreening: Reader<ScreeningInputs> = (at, reading) => {
  const found = fields(at, reading)
  if (found === undefined) return undefined
  const { push: pushed, rollers, drive, load, zone, heights, gaps, devices, lifts, walks, voltage, ...rest } = found
  return {
    ...rest,
    push:
      pushed === null
        ? null
        : {
            rolling: pushed.rolling,
            starting: pushed.starting,
            speed: pushed.speed,
            startSeconds: pushed.within,
            distance: pushed.distance,
            handsKnuckleToShoulder: pushed.hands,
            evenFloor: pushed.floor,
            noTrapping: pushed.trapping,
            pushesPerUnit: pushed.perUnit,
          },
    heights: heights.map(([place, one]) => ({ place, ...one })),
    gaps: gaps.map(([place, { width, for: part }]) => ({ place, width, part })),
    devices: devices.map(([place, { stops, ...one }]) => ({ place, stopSeconds: stops, ...one })),
    rollers: rollers === null ? null : (({ bottom, ...one }) => ({ ...one, soft: bottom }))(rollers),
    drive: drive === null ? null : (({ idler, mass, ...one }) => ({ ...one, idlerForce: idler, ratedMass: mass }))(drive),
    load: load === null ? null : { base: load.base, centreHeight: load.centre, friction: load.friction, drivenShare: load.driven },
    zone: zone === null ? null : { noseMargin: zone.nose, rearMargin: zone.rear },
    volts: voltage,
    lifts: lifts.map(([place, mass]) => ({ place, mass })),
    walks: walks.map(([of, { perUnit, measured }]) => ({ of, metres: perUnit, measured })),
  }
}
