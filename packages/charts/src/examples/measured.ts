import type { Figure } from '../draw/figure.ts'
import { quantilePlot } from '../measured/quantilePlot.ts'
import { runChart } from '../measured/runChart.ts'
import { timesSpread } from '../measured/timesSpread.ts'

/** Invented times of wiring, seconds. */
const TIMES = [52, 49, 55, 61, 50, 53, 48, 57, 66, 51, 54, 47, 59, 52, 50, 56, 63, 49, 53, 58, 97, 51, 55, 60]
/** 1,346 s of 24 times */
const MEAN = 1346 / 24
const even = (x: number): number => Math.min(1, Math.max(0, (x - 45) / 25))

export function timesSpreadExample(): Figure {
  return timesSpread({ name: 'Wiring, small', values: TIMES, mean: MEAN, cdf: even, curve: 'lognormal' })
}

export function quantilePlotExample(): Figure {
  return quantilePlot({ name: 'Wiring, small', values: TIMES, mean: MEAN, quantile: (u) => 45 + 25 * u, curve: 'lognormal' })
}

export function runChartExample(): Figure {
  const times = TIMES.map((seconds, index) => ({ seconds, operator: index % 3 === 0 ? 'Day crew' : 'Late crew', line: index + 2 }))
  return runChart({ name: 'Wiring, small', times, mean: MEAN, fences: [40, 70], slope: 0.3 })
}
