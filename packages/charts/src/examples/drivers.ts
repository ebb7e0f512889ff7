import type { DriverResult } from '@loopwright/study'
import { drivers } from '../effects/drivers.ts'
import type { Figure } from '../draw/figure.ts'

type Effect = DriverResult['drivers'][number]

/** Invented. */
const effect = (kind: Effect['kind'], name: string, mean: number, halfWidth: number): Effect => ({
  kind,
  name,
  station: null,
  lessIsBetter: kind !== 'mix',
  elasticity: { n: 30, mean, sd: halfWidth * 2.7, level: 0.95, halfWidth, low: mean - halfWidth, high: mean + halfWidth, status: 'ok' },
  unitsOfStep: mean * 0.05 * 332,
})

export function driversExample(): Figure {
  return drivers(
    {
      drivers: [
        effect('task', 'S6 Tightness test', 0.52, 0.04),
        effect('moves', 'moves (speed and ramps)', 0.21, 0.03),
        effect('task', 'S2 Refrigerant parts', 0.1, 0.03),
        effect('mix', 'share of coldKit', -0.08, 0.02),
      ],
      limits: [0],
      step: 0.05,
    },
    { per: 'shift' },
  )
}
