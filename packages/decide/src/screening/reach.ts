/** Gaps, speeds and distances: what moves near people. */
import { compareWith, type Guidance, type ScreeningFinding } from './finding.ts'
import type { BodyPart, ProtectiveDevice, ScreeningInputs } from './inputs.ts'
import type { LineFigures } from './lineFigures.ts'
import { ownLimit } from './ownLimit.ts'

/** metres */
const GAPS: Readonly<Record<BodyPart, number>> = {
  body: 0.5,
  head: 0.3,
  leg: 0.18,
  foot: 0.12,
  toes: 0.05,
  arm: 0.12,
  hand: 0.1,
  finger: 0.025,
}

const MINIMUM_GAP = {
  source: 'EN 349, now ISO 13854',
  edition: 'check the current one',
  evidence: 'second-hand quote, check the edition',
} as const

/** Gaps that were named, and the gap between two carriers that stand. */
export function gapFindings(inputs: ScreeningInputs, { standingGap }: LineFigures): ScreeningFinding[] {
  const row = (id: string, what: string, value: number, guidance: Guidance, assumptions: readonly string[]): ScreeningFinding =>
    compareWith(
      {
        id,
        topic: 'Crushing',
        what,
        value,
        unit: 'm',
        guidance,
        assumptions,
        measure: 'the narrowest gap in every position of the movement, and the force that closes it',
      },
      inputs,
    )
  const least = (value: number): Guidance => ({ value, upTo: null, side: 'at least', ...MINIMUM_GAP })
  const named = inputs.gaps.map(({ place, width, part }, index) => {
    const own = inputs.ownCopy.some(({ limit }) => limit === 'gap') ? ownLimit(inputs, 'gap', 'ISO 13854', 'at least').guidance : null
    return row(`gap-${index + 1}`, `gap at ${place}, for the ${part}`, width, own ?? least(GAPS[part]), [
      'nothing larger than this part of the body can get in',
    ])
  })
  if (standingGap === null || !(standingGap < GAPS.body)) return named
  const standing: Guidance = {
    value: GAPS.body,
    upTo: null,
    side: 'at least',
    source: 'the least gap for a body, taken as a flag',
    edition: 'none',
    evidence: 'by mechanics',
  }
  return [
    ...named,
    row('gap-standing', 'gap between two carriers that stand one after the other', standingGap, standing, [
      'possible crushing place, look closer: somebody can reach in while a carrier comes',
    ]),
  ]
}

/** A distance, and how it was found; millimetres and seconds inside the formula, metres outside. */
export interface SeparationDistance {
  /** metres */
  readonly distance: number
  /** speed of approach that was used, metres per second */
  readonly approach: number
  /** metres added for reaching through, over or under */
  readonly extra: number
}

/** millimetres and millimetres per second */
const NEAR = { approach: 2000, to: 500, farApproach: 1600 }

/**
 * Distance of a protective device from the hazard: `S = K·T + C`.
 *
 * A light curtain of 40 mm or finer: `C = 8·(d − 14)`, K = 2000 mm/s; beyond 500 mm anew with K = 1600 mm/s, and 500 mm at least. Coarser: C = 850 mm, K = 1600 mm/s. A
 * scanner over the floor: `C = 1200 − 0.4·H`, 850 mm at least, K = 1600 mm/s.
 *
 * @param device  its whole stopping time, and its resolution (curtain) or the height of its field (scanner)
 * @returns       null where resolution or height is not known
 * @see ISO 13855, a second-hand quote of an earlier edition; the edition of 2024 is ordered anew (from memory). Coarser than 40 mm and scanners: from memory
 * @example separationDistance({ kind: 'curtain', stopSeconds: 0.32, resolution: 0.014, height: null }).distance // => 0.512
 */
export function separationDistance({
  kind,
  stopSeconds,
  resolution,
  height,
}: Pick<ProtectiveDevice, 'kind' | 'stopSeconds' | 'resolution' | 'height'>): SeparationDistance | null {
  const made = (approach: number, extra: number, least = 0): SeparationDistance => ({
    distance: Math.max(least, approach * stopSeconds + extra) / 1000,
    approach: approach / 1000,
    extra: extra / 1000,
  })
  if (kind === 'scanner') return height === null ? null : made(NEAR.farApproach, Math.max(850, 1200 - 0.4 * 1000 * height))
  if (resolution === null) return null
  const millimetres = 1000 * resolution
  if (millimetres > 40) return made(NEAR.farApproach, 850)
  const extra = Math.max(0, 8 * (millimetres - 14))
  const near = made(NEAR.approach, extra, 100)
  return near.distance * 1000 <= NEAR.to ? near : made(NEAR.farApproach, extra, NEAR.to)
}

/** Devices that were named: their distance against the least one. */
export function deviceFindings(inputs: ScreeningInputs): ScreeningFinding[] {
  return inputs.devices.map((device, index) => {
    const least = separationDistance(device)
    const memory = device.kind === 'scanner' || (device.resolution ?? 0) > 0.04
    const own = inputs.ownCopy.some(({ limit }) => limit === 'distance')
      ? ownLimit(inputs, 'distance', 'ISO 13855', 'at least').guidance
      : null
    const guidance: Guidance | null =
      own ??
      (least === null
        ? null
        : {
            value: least.distance,
            upTo: null,
            side: 'at least',
            source: 'ISO 13855',
            edition: 'an earlier one; that of 2024 is ordered anew (from memory)',
            evidence: memory ? 'from memory' : 'second-hand quote, check the edition',
          })
    return compareWith(
      {
        id: `distance-${index + 1}`,
        topic: 'Separation distance',
        what: `${device.kind === 'scanner' ? 'scanner' : 'light curtain'} at ${device.place}, from the hazard`,
        value: device.distance,
        unit: 'm',
        guidance,
        assumptions: [
          `stopping time ${device.stopSeconds} s, of device, control and machine together`,
          ...(least === null
            ? []
            : [`speed of approach ${least.approach} m/s`, `${Math.round(1000 * least.extra)} mm added for reaching through`]),
        ],
        measure: 'the stopping time on the machine, at full speed and load, several times; then the distance',
        ...(least === null && own === null
          ? { why: device.kind === 'scanner' ? 'the height of its field is not known' : 'its resolution is not known' }
          : {}),
      },
      inputs,
    )
  })
}

/** kilograms up to, metres per second where people work, metres per second where they pass */
const SPEEDS: readonly (readonly [massUpTo: number, working: number, passing: number])[] = [
  [35, 2.0, 2.5],
  [50, 1.5, 2.0],
  [100, 1.0, 1.0],
  [Number.POSITIVE_INFINITY, 0.5, 0.6],
]

/** The fastest drive against the published speed for this mass. */
export function speedFindings(inputs: ScreeningInputs, { speed }: LineFigures): ScreeningFinding[] {
  if (speed === null) return []
  const { mass, people } = inputs
  const row = mass === null ? undefined : SPEEDS.find(([upTo]) => mass <= upTo)
  const own = inputs.ownCopy.some(({ limit }) => limit === 'speed') ? ownLimit(inputs, 'speed', 'EN 619', 'at most').guidance : null
  const guidance: Guidance | null =
    own ??
    (row === undefined || people === null
      ? null
      : {
          value: people === 'working' ? row[1] : row[2],
          upTo: null,
          side: 'at most',
          source: 'EN 619',
          edition: '2022',
          evidence: 'second-hand quote, check the edition',
        })
  const unknown =
    mass === null
      ? 'the mass of a loaded carrier is not known'
      : people === null
        ? 'whether people work at the line or only pass it is not said'
        : null
  return [
    compareWith(
      {
        id: 'speed',
        topic: 'Speed',
        what: people === 'passing' ? 'fastest drive, where people pass' : 'fastest drive, where people work',
        value: speed,
        unit: 'm/s',
        guidance,
        assumptions: mass === null ? [] : [`carrier with product ${mass} kg`],
        measure: 'the speed of a loaded carrier at every drive, and the force when it is held',
        why: own === null ? unknown : null,
      },
      inputs,
    ),
  ]
}
