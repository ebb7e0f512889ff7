import type { LossResult } from '@loopwright/study'
import type { Figure } from '../draw/figure.ts'
import { losses } from '../effects/losses.ts'

type Step = LossResult['causes'][number]['step']

/** Invented. */
export function stepExample(mean: number, halfWidth: number): Step {
  const status =
    halfWidth === 0 ? 'identical in every replication' : Math.abs(mean) > halfWidth ? 'difference shown' : 'no difference shown'
  const pairingGain = halfWidth === 0 ? null : 4
  return { n: 30, mean, sd: halfWidth * 2.7, level: 0.95, halfWidth, low: mean - halfWidth, high: mean + halfWidth, pairingGain, status }
}

const total = (mean: number, halfWidth: number): NonNullable<LossResult['forecast']> => ({
  skewness: 0,
  method: 'Hall',
  n: 30,
  mean,
  sd: halfWidth * 2.7,
  level: 0.95,
  halfWidth,
  low: mean - halfWidth,
  high: mean + halfWidth,
  status: 'ok',
})

const cause = (
  kind: LossResult['causes'][number]['kind'],
  name: string,
  mean: number,
  halfWidth: number,
): LossResult['causes'][number] => ({
  kind,
  name,
  step: stepExample(mean, halfWidth),
  alone: stepExample(mean, halfWidth),
})

export function lossesExample(): Figure {
  return losses(
    {
      forecast: total(331.6, 2.4),
      ideal: total(439.2, 0.3),
      gap: stepExample(107.6, 2.3),
      causes: [
        cause('stop', 'jam at a transfer', 11.8, 1.6),
        cause('stop', 'tightness tester', 17.3, 2.1),
        cause('breaks', 'breaks', 40.4, 0.6),
        cause('exchange', 'exchange at S6', 28.9, 0.4),
        cause('spread of times', 'spread of task times', 10.4, 0.7),
        cause('products', 'differences between products', -1.2, 0.5),
        cause('carriers', 'shortage of carriers', 0, 0),
      ],
    },
    { per: 'shift' },
  )
}
