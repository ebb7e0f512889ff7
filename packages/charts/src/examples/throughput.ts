import type { Figure } from '../figure.ts'
import { throughput } from '../throughput.ts'
import { baseLineSweep } from './baseLine.ts'

export function throughputExample(): Figure {
  return throughput(baseLineSweep(), { per: 'shift' })
}
