import type { Figure } from '../draw/figure.ts'
import { differences } from '../effects/differences.ts'

export function differencesExample(): Figure {
  const rows = [
    { name: 'fan deck beside wiring', mean: -8.2, low: -10.6, high: -5.8, before: 334, after: 326 },
    { name: 'all three side by side', mean: -21.3, low: -24.1, high: -18.5, before: 334, after: 313 },
    { name: 'one carrier more', mean: 0.4, low: -1.1, high: 1.9, before: 334, after: 334 },
    { name: 'test 5 s shorter', mean: 9.1, low: 7.4, high: 10.8, before: 334, after: 343, named: true },
  ]
  return differences(rows, { per: 'shift', beside: '“today’s order”' })
}
