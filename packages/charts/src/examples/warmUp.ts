import type { Figure } from '../draw/figure.ts'
import { warmUp } from '../times/warmUp.ts'

/** fills in nearly an hour, then scatters a little */
const rate = (at: number): number => (at < 9 ? 46 * (1 - Math.exp(-at / 3)) : 45 + ((at * 7) % 5) - 2)

export function warmUpExample(): Figure {
  const level = {
    n: 5,
    mean: 45,
    sd: 1,
    level: 0.95,
    halfWidth: 0.6,
    low: 44.4,
    high: 45.6,
    skewness: 0,
    method: 'Hall',
    status: 'ok',
  } as const
  return warmUp({
    intervalSeconds: 360,
    cutSeconds: 3240,
    replications: 5,
    outputPerHour: level,
    productsInLine: { ...level, mean: 11 },
    series: {
      unitsPerHour: Array.from({ length: 200 }, (_, at) => rate(at)),
      products: Array.from({ length: 200 }, (_, at) => Math.min(11, at)),
    },
  })
}
