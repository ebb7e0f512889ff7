/** How often and how high people handle things: pushes a shift, height of the hands, lifting. */
import { compareWith, type Guidance, type ScreeningFinding } from './finding.ts'
import type { ScreeningInputs, WorkHeight } from './inputs.ts'
import { ownLimit } from './ownLimit.ts'

/** metres */
const HEIGHTS: Readonly<Record<WorkHeight['work'], readonly (readonly [source: string, edition: string, low: number, high: number])[]>> = {
  precision: [
    ['Pheasant & Haslegrave, Bodyspace', '2006', 1.02, 1.32],
    ['NIOSH 97-117, Elements of ergonomics programs', '1997', 0.94, 1.09],
  ],
  light: [
    ['Pheasant & Haslegrave, Bodyspace', '2006', 0.87, 1.17],
    ['NIOSH 97-117, Elements of ergonomics programs', '1997', 0.86, 0.94],
  ],
  heavy: [
    ['Pheasant & Haslegrave, Bodyspace', '2006', 0.72, 1.12],
    ['NIOSH 97-117, Elements of ergonomics programs', '1997', 0.71, 0.89],
  ],
}

/** Height of the hands, standing, against two published ranges each: they do not say the same. */
export function heightFindings(inputs: ScreeningInputs): ScreeningFinding[] {
  return inputs.heights.flatMap(({ place, height, work }, index) =>
    HEIGHTS[work].map(
      ([source, edition, value, upTo], which): ScreeningFinding =>
        compareWith(
          {
            id: `height-${index + 1}-${which + 1}`,
            topic: 'Working height',
            what: `hands at ${place}, ${work} work, standing`,
            value: height,
            unit: 'm',
            guidance: { value, upTo, side: 'between', source, edition, evidence: 'stated in the source' },
            assumptions: ['people of ordinary height; height of the hands, not of the conveyor'],
            measure: 'the height of the hands at the work, for the shortest and the tallest of the crew',
          },
          inputs,
        ),
    ),
  )
}

/** Pushes of one station in a shift: told, never judged. */
export interface Handlings {
  readonly place: string
  /** mean of a shift */
  readonly perShift: number
  /** net time, > 0 */
  readonly netSeconds: number
}

const REPETITION = 'ISO 11228-3 (from memory: 30 actions a minute as reference; a cycle below 30 s counts as repetitive)'

/**
 * Handlings a shift, and how often that is a minute.
 *
 * @example handlingFindings([{ place: 'Load', perShift: 1920, netSeconds: 27_000 }], { ownCopy: [], secondHand: false, fromMemory: false })[0].value // => 1920
 */
export function handlingFindings(
  handlings: readonly Handlings[],
  inputs: Pick<ScreeningInputs, 'ownCopy' | 'secondHand' | 'fromMemory'>,
): ScreeningFinding[] {
  return handlings.flatMap(({ place, perShift, netSeconds }, index) => [
    compareWith(
      {
        id: `handlings-${index + 1}`,
        topic: 'Handlings',
        what: `pushes and pulls at ${place} in a shift`,
        value: perShift,
        unit: 'count',
        guidance: null,
        assumptions: [],
        measure: 'pushes of one person in a shift, counted; who rotates, and how often',
        why: `the count is told without a verdict; what it means takes force, posture and recovery together: ${REPETITION}`,
      },
      inputs,
    ),
    compareWith(
      {
        id: `actions-${index + 1}`,
        topic: 'Handlings',
        what: `pushes and pulls at ${place} in a minute of work`,
        value: perShift / (netSeconds / 60),
        unit: 'count',
        ...ownLimit(inputs, 'actionsPerMinute', 'ISO 11228-3', 'at most'),
        assumptions: ['pushes and pulls alone; the actions of the work itself come on top'],
        measure: 'all technical actions of the hand in a cycle, from a film',
      },
      inputs,
    ),
  ])
}

const LIFT: Guidance = {
  value: 23,
  upTo: null,
  side: 'at most',
  source: 'NIOSH lifting equation, load constant',
  edition: 'revised 1991',
  evidence: 'from memory',
}

/** What is lifted by hand at load and unload. */
export function liftFindings(inputs: ScreeningInputs): ScreeningFinding[] {
  return inputs.lifts.map(({ place, mass }, index) =>
    compareWith(
      {
        id: `lift-${index + 1}`,
        topic: 'Lifting',
        what: `mass lifted at ${place}`,
        value: mass,
        unit: 'kg',
        guidance: LIFT,
        assumptions: [
          'the load constant of the best case: close to the body, at waist height, rarely; every step away from it lowers the limit',
        ],
        measure: 'reach, height, turn and frequency of the lift, for the equation in full',
      },
      inputs,
    ),
  )
}
