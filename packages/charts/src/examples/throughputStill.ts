import type { Figure } from '../draw/figure.ts'
import { throughput } from '../throughput/throughput.ts'
import { baseLineCount, baseLineSweep } from './baseLine.ts'

/** With 15 carriers and more some shifts end in gridlock, so that their means lie low and their intervals are wide. */
export function throughputStillExample(): Figure {
  const sweep = baseLineSweep()
  const counts = sweep.counts.map((count) => (count.carriers < 15 ? count : stuck(count.carriers)))
  return throughput({ ...sweep, counts }, { per: 'shift' })
}

/** Of four shifts as many stand still as there are carriers above 14. */
function stuck(carriers: number): ReturnType<typeof baseLineCount> {
  const count = baseLineCount(carriers)
  const gridlocks = carriers - 14
  const mean = (count.mean!.mean * (4 - gridlocks)) / 4 + 20
  const halfWidth = 70
  return {
    ...count,
    replications: 4,
    gridlocks,
    units: [...count.units.slice(0, 4 - gridlocks), ...[15, 25, 35].slice(0, gridlocks)],
    mean: { ...count.mean!, n: 4, mean, halfWidth, low: mean - halfWidth, high: mean + halfWidth },
    p10: { ...count.p10!, point: 20 },
  }
}
