/** Mechanics of the conveyor: zone and stopping, drive force, slip and tipping, the curve. */
import { compareWith, type ScreeningFinding } from './finding.ts'
import type { ScreeningInputs } from './inputs.ts'
import type { LineFigures } from './lineFigures.ts'
import { GRAVITY, rollingForce } from './pushForce.ts'
import { MECHANICS, rows } from './rows.ts'

/** Length of a zone, and the way to stop in it. */
export function zoneFindings(inputs: ScreeningInputs, figures: LineFigures): ScreeningFinding[] {
  const { zone } = inputs
  const { zoneLength, carrierLength, speed, acceleration, reactionSeconds, sensorBeforeStop } = figures
  const stopping = speed === null ? null : (acceleration === null ? 0 : speed ** 2 / (2 * acceleration)) + speed * reactionSeconds
  return rows(inputs, [
    zone === null
      ? null
      : [
          'zone-length',
          'Zone length',
          `shortest zone${figures.zone === null ? '' : `, ${figures.zone}`}`,
          zoneLength,
          'm',
          'at least',
          carrierLength === null ? null : carrierLength + zone.noseMargin + zone.rearMargin,
          'by mechanics',
          MECHANICS,
          [
            `margins ${Math.round(1000 * zone.noseMargin)} mm before and ${Math.round(1000 * zone.rearMargin)} mm behind the carrier (20 to 100 mm: common practice, no source)`,
          ],
          'where a carrier comes to rest, light and heavy, many times',
        ],
    speed === null
      ? null
      : [
          'stopping',
          'Stopping',
          'way from the sensor’s signal to standstill',
          stopping,
          'm',
          'at most',
          sensorBeforeStop > 0 ? sensorBeforeStop : null,
          'by mechanics',
          MECHANICS,
          [`brakes at ${acceleration ?? 'any'} m/s², reacts in ${reactionSeconds} s`],
          'where a carrier comes to rest after its sensor, at full speed and load',
        ],
  ])
}

/**
 * Newtons that a zone’s drive needs: `m·g·μ + n·f + m·a`.
 *
 * @param rollers     in the zone
 * @param idlerForce  newtons that each takes, 0.85 … 1.8 as makers state it
 * @example Math.round(driveForce(115, 0.03, 15, 1.2, 0.4)) // => 98
 */
export const driveForce = (mass: number, friction: number, rollers: number, idlerForce: number, acceleration: number): number =>
  rollingForce(mass, friction) + rollers * idlerForce + mass * acceleration

/** Force, power and current of a zone’s drive. */
export function driveFindings(inputs: ScreeningInputs, { speed, acceleration }: LineFigures): ScreeningFinding[] {
  const { drive, mass, push } = inputs
  if (drive === null) return []
  const friction = push?.starting ?? 0.03
  const force = mass === null ? null : driveForce(mass, friction, drive.rollers, drive.idlerForce, acceleration ?? 0)
  const assumptions = [`starting coefficient ${friction}`, `${drive.rollers} rollers at ${drive.idlerForce} N each`]
  const { startCurrent, startTogether, peakCurrent } = drive
  return rows(inputs, [
    drive.force === null
      ? null
      : [
          'drive-force',
          'Drive',
          'force to start the heaviest carrier',
          force,
          'N',
          'at most',
          drive.force,
          'by mechanics',
          `${MECHANICS}; nameplate`,
          assumptions,
          'the current of the drive when it starts the heaviest carrier, cold',
        ],
    drive.power === null
      ? null
      : [
          'drive-power',
          'Drive',
          'power at full speed while it starts',
          force === null || speed === null ? null : (force * speed) / drive.efficiency,
          'W',
          'at most',
          drive.power,
          'by mechanics',
          `${MECHANICS}; nameplate`,
          [...assumptions, `efficiency ${drive.efficiency}`],
          'the power drawn by one zone',
        ],
    drive.ratedMass === null
      ? null
      : [
          'drive-mass',
          'Drive',
          'carrier with product in one zone',
          mass,
          'kg',
          'at most',
          0.8 * drive.ratedMass,
          'common practice, no source',
          'four fifths of the rated mass',
          [],
          'the mass of the heaviest carrier',
        ],
    startCurrent === null || startTogether === null
      ? null
      : [
          'start-current',
          'Drive',
          `current of ${startTogether} zones that start together`,
          startCurrent * startTogether,
          'A',
          'at most',
          peakCurrent,
          'by mechanics',
          'sum of the currents; peak of the supply',
          ['all of them start at the same instant; a stagger takes them one after the other'],
          'the current of the supply when a train starts',
        ],
  ])
}

/** Slip and tipping when a drive starts or brakes. */
export function loadFindings(inputs: ScreeningInputs, { acceleration }: LineFigures): ScreeningFinding[] {
  const { load } = inputs
  if (load === null || acceleration === null) return []
  const { base, centreHeight, friction, drivenShare } = load
  return rows(inputs, [
    [
      'slip',
      'Slip',
      'acceleration of the drive',
      acceleration,
      'm/s²',
      'at most',
      friction * GRAVITY * drivenShare,
      'by mechanics',
      MECHANICS,
      [
        `static friction ${friction} (0.2 to 0.3: common practice, no source)`,
        `${Math.round(100 * drivenShare)} % of the mass on driven rollers`,
      ],
      'whether a carrier slips when it starts and stops, clean and oily',
    ],
    [
      'tipping',
      'Tipping',
      'acceleration of the drive, for the load on the carrier',
      acceleration,
      'm/s²',
      'at most',
      (GRAVITY * (base / 2)) / centreHeight / 2,
      'by mechanics',
      `${MECHANICS}, half of what tips it`,
      ['the load does not slide or sway; half of the tipping acceleration is left as reserve (common practice, no source)'],
      'the load on the carrier in an emergency stop, and against a stop',
    ],
  ])
}

/**
 * Width that a carrier sweeps in a curve: `√((R + w)² + (l/2)²) − R`, metres.
 *
 * @example Math.round(1000 * sweptWidth(0.9, 0.6, 0.8)) // => 652
 */
export const sweptWidth = (innerRadius: number, width: number, length: number): number =>
  Math.hypot(innerRadius + width, length / 2) - innerRadius

/** What low voltage takes away, and what not; and the width of a curve. */
export function otherFindings(inputs: ScreeningInputs, { carrierLength, carrierWidth }: LineFigures): ScreeningFinding[] {
  const { curve, volts } = inputs
  const known = carrierLength !== null && carrierWidth !== null
  const findings = rows(inputs, [
    curve === null
      ? null
      : [
          'curve',
          'Width',
          'between the guides of the curve',
          curve.width,
          'm',
          'at least',
          known ? sweptWidth(curve.innerRadius, carrierWidth, carrierLength) + 0.025 : null,
          'by mechanics',
          `${MECHANICS}, and 25 mm`,
          ['a stiff carrier that follows the inner guide'],
          'the longest and widest carrier through the curve, by hand',
        ],
  ])
  if (volts === null) return findings
  return [
    ...findings,
    compareWith(
      {
        id: 'voltage',
        topic: 'Low voltage',
        what: 'voltage of the drives',
        value: volts,
        unit: 'V',
        guidance: null,
        assumptions: [],
        measure: 'nothing that this figure would tell: look at pinch points, entanglement and falling loads',
        why: 'low voltage removes shock, not pinch, entanglement or falling loads',
      },
      inputs,
    ),
  ]
}
