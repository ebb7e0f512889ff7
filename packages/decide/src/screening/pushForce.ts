/** Forces to start a carrier by hand and to keep it moving. */
import { compareWith, type Guidance, type ScreeningFinding } from './finding.ts'
import type { PushInputs, ScreeningInputs } from './inputs.ts'
import { ownLimit } from './ownLimit.ts'

/** metres per second squared */
export const GRAVITY = 9.81

/**
 * Newtons that keep a carrier rolling: `m·g·μ`.
 *
 * @param mass      kilograms
 * @param friction  coefficient of rolling
 * @example Math.round(rollingForce(115, 0.03)) // => 34
 */
export const rollingForce = (mass: number, friction: number): number => mass * GRAVITY * friction

/**
 * Newtons that start it and bring it to a speed in a time: `m·g·μ + m·v/t`.
 *
 * @param seconds  > 0
 * @example Math.round(startingForce(115, 0.03, 0.25, 1)) // => 63
 */
export const startingForce = (mass: number, friction: number, speed: number, seconds: number): number =>
  rollingForce(mass, friction) + (mass * speed) / seconds

const HSE = {
  source: 'HSE L23, Manual handling, figures for pushing and pulling',
  edition: 'as stated there',
  evidence: 'stated in the source',
} as const
const atMost = (value: number): Guidance => ({ value, upTo: null, side: 'at most', ...HSE })
/** Newtons. */
const GUIDANCE = { start: { men: atMost(200), women: atMost(150) }, keep: { men: atMost(100), women: atMost(70) } } as const
/** metres */
const DISTANCE_MOST = 20

const MEASURE = 'the force to start and to keep moving, with a force gauge on the heaviest carrier, at the worst place of the floor or bed'

/** Push and pull at the line; none where nobody pushes. */
export function pushFindings(inputs: ScreeningInputs): ScreeningFinding[] {
  const { push, mass } = inputs
  if (push === null) return []
  const start = mass === null ? null : startingForce(mass, push.starting, push.speed, push.startSeconds)
  const keep = mass === null ? null : rollingForce(mass, push.rolling)
  const why = whyNotHere(push)
  const row = (id: string, what: string, value: number | null, guidance: Guidance, assumptions: readonly string[]): ScreeningFinding =>
    compareWith({ id, topic: 'Push force', what, value, unit: 'N', guidance, assumptions, measure: MEASURE, why }, inputs)
  const conditions = [
    'hands between knuckle and shoulder',
    `at most about ${DISTANCE_MOST} m`,
    'even floor',
    'nothing to trap, no confined space',
  ]
  const startOf = [`starting coefficient ${push.starting}`, `brought to speed in ${push.startSeconds} s`, ...conditions]
  const keepOf = [`rolling coefficient ${push.rolling}`, ...conditions]
  const asked = (limit: 'startForce' | 'keepForce', what: string, value: number | null, standard: string): ScreeningFinding =>
    compareWith(
      {
        id: `push-own-${limit}`,
        topic: 'Push force',
        what,
        value,
        unit: 'N',
        ...ownLimit(inputs, limit, standard, 'at most'),
        assumptions: limit === 'startForce' ? startOf : keepOf,
        measure: `${MEASURE}; the limit for this height, distance and frequency in your own copy`,
      },
      inputs,
    )
  return [
    row('push-start-women', 'to start or stop a carrier, guidance for women', start, GUIDANCE.start.women, startOf),
    row('push-start-men', 'to start or stop a carrier, guidance for men', start, GUIDANCE.start.men, startOf),
    row('push-keep-women', 'to keep a carrier moving, guidance for women', keep, GUIDANCE.keep.women, keepOf),
    row('push-keep-men', 'to keep a carrier moving, guidance for men', keep, GUIDANCE.keep.men, keepOf),
    asked(
      'startForce',
      'to start a carrier so often, for nine of ten women',
      start,
      'ISO 11228-2, or the tables of Snook & Ciriello (1991)',
    ),
    asked(
      'keepForce',
      'to keep a carrier moving so often, for nine of ten women',
      keep,
      'ISO 11228-2, or the tables of Snook & Ciriello (1991)',
    ),
  ]
}

/** The figures hold under conditions only; where one does not hold or is not said, nothing is compared. */
function whyNotHere({ distance, handsKnuckleToShoulder, evenFloor, noTrapping }: PushInputs): string | null {
  const unsaid: string[] = []
  if (distance === null) unsaid.push('the distance')
  else if (distance > DISTANCE_MOST) return `the figures hold to about ${DISTANCE_MOST} m only, and it is pushed ${distance} m`
  if (handsKnuckleToShoulder === null) unsaid.push('the height of the hands')
  else if (!handsKnuckleToShoulder) return 'the figures hold only with the hands between knuckle and shoulder'
  if (evenFloor === null) unsaid.push('the floor')
  else if (!evenFloor) return 'the figures hold only on an even floor'
  if (noTrapping === null) unsaid.push('whether somebody can be trapped')
  else if (!noTrapping) return 'the figures hold only where nobody can be trapped, and with room to move'
  return unsaid.length === 0 ? null : `the figures hold under conditions, and nothing is said of ${unsaid.join(', ')}`
}
