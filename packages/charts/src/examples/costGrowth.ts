import { costGrowth } from '../effects/costGrowth.ts'
import type { Figure } from '../draw/figure.ts'

/** Invented. */
export function costGrowthExample(): Figure {
  const sizes = [20, 200, 2000, 20_000]
  const series = (name: string, costs: readonly number[]) =>
    costs.map((median, index) => ({
      series: name,
      size: sizes[index]!,
      cost: median,
      least: 0.96 * median,
      greatest: 1.07 * median,
    }))
  return costGrowth([...series('event engine', [210, 215, 240, 290]), ...series('recursion', [60, 58, 66, 80])], {
    of: 'zones',
    unit: 'nanoseconds',
    tenfold: true,
  })
}
