import type { Figure } from '../draw/figure.ts'
import { throughput } from '../throughput/throughput.ts'
import { baseLineSweep } from './baseLine.ts'

export function throughputExample(): Figure {
  return throughput(baseLineSweep(), { per: 'shift' })
}
