/** Rollers under the carrier: how many, how wide the gaps, how much on each. */
import type { ScreeningFinding } from './finding.ts'
import type { ScreeningInputs } from './inputs.ts'
import type { LineFigures } from './lineFigures.ts'
import { rows, USUAL } from './rows.ts'

/** Rollers under the carrier, fingers between them, load on one. */
export function rollerFindings(inputs: ScreeningInputs, { carrierLength, carrierWidth }: LineFigures): ScreeningFinding[] {
  const { rollers, mass } = inputs
  if (rollers === null) return []
  const { pitch, diameter, rating, soft, bedGap, bedStep, width } = rollers
  const least = soft ? 4 : 3
  const under = (free: number): number | null => (carrierLength === null ? null : Math.floor((carrierLength - free) / pitch + 1e-9))
  const carried = under(0)
  const share = (carried ?? 0) > 3 ? 2 : 1.5
  const onOne = mass === null || carried === null || carried === 0 ? null : (mass * share) / carried
  return rows(inputs, [
    [
      'rollers-under',
      'Roller spacing',
      'rollers under the carrier at any place',
      carried,
      'count',
      'at least',
      least,
      'common practice, no source',
      USUAL,
      [soft ? 'a bottom that sags' : 'a stiff bottom', `${Math.round(1000 * pitch)} mm from axis to axis`],
      'the spacing of the rollers, and the carrier’s bottom under load',
    ],
    bedGap === null
      ? null
      : [
          'rollers-gap',
          'Roller spacing',
          'rollers under the carrier across the widest gap of the bed',
          under(bedGap),
          'count',
          'at least',
          least,
          'common practice, no source',
          USUAL,
          [`gap ${Math.round(1000 * bedGap)} mm`],
          'the widest gap between two sections, and at transfers',
        ],
    diameter === null
      ? null
      : [
          'rollers-fingers',
          'Roller spacing',
          'gap between two rollers, for fingers',
          pitch - diameter,
          'm',
          'at least',
          0.025,
          'second-hand quote, check the edition',
          'EN 349, now ISO 13854',
          ['nothing covers the gap; a roller that gives way counts differently'],
          'the gap between rollers, and what a carrier leaves of it when it comes',
        ],
    rating === null
      ? null
      : [
          'rollers-load',
          'Roller spacing',
          'load on one roller',
          onOne,
          'kg',
          'at most',
          rating,
          'common practice, no source',
          USUAL,
          [`${share} times the even share, since rollers are never all level`],
          'the load on a roller with the heaviest carrier, and how level the bed is',
        ],
    bedStep === null
      ? null
      : [
          'bed-step',
          'Roller spacing',
          'step between two sections of the bed',
          bedStep,
          'm',
          'at most',
          0.002,
          'common practice, no source',
          USUAL,
          [],
          'the height of the bed on both sides of every joint',
        ],
    bedGap === null
      ? null
      : [
          'bed-gap',
          'Roller spacing',
          'gap between two sections of the bed',
          bedGap,
          'm',
          'at most',
          pitch / 2,
          'common practice, no source',
          USUAL,
          [],
          'the gap at every joint',
        ],
    width === null
      ? null
      : [
          'bed-width',
          'Width',
          'rollers between the guides',
          width,
          'm',
          'at least',
          carrierWidth === null ? null : carrierWidth + 0.05,
          'common practice, no source',
          USUAL,
          ['50 mm more than the carrier is wide, at least'],
          'the widest carrier with its product, and the guides',
        ],
  ])
}
