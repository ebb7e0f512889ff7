/**
 * Where a limit says "at most", no line made up at random makes more in a long run. Loops and graphs, with everything that a line can have.
 * A sum of n times with a coefficient of variation of up to 1.5 stays within 4.9 · 1.5/√n of its mean but once in a million; so much is allowed, and what lies in
 * the line at the start. The seed is fixed.
 */
import { type LineSpec, simulate } from '@loopwright/line'
import { lineLimits } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { generalFrom } from './oracle/readAloud/generalLine.ts'
import { lineFrom } from './oracle/readAloud/randomLine.ts'

const SPREAD = 4.9 * 1.5

/** Long, and with a mix that does not run out. */
function long(line: LineSpec): LineSpec {
  const mix: LineSpec['mix'] = line.mix.kind === 'list' ? { ...line.mix, kind: 'pattern' } : line.mix
  return { ...line, mix, window: { warmupSeconds: 1000, endSeconds: 9000 } }
}

test.each([
  ['loops', lineFrom, 10],
  ['any lines', generalFrom, 2],
] as const)('%s make no more than what is proven', (_, make, near) => {
  let close = 0
  const kinds = new Set<string>()
  for (let seed = 0; seed < 70; seed += 1) {
    const line = long(make(seed))
    const limits = lineLimits(line)
    const { output } = simulate(line, { seed: 'limits', replication: 0 })
    if (limits.length === 0) {
      expect([seed, output]).toEqual([seed, 0])
      continue
    }
    const least = Math.min(...limits.map(({ atMostPerWindow }) => atMostPerWindow ?? Infinity))
    const allowed = least * (1 + SPREAD / Math.sqrt(Math.max(1, least))) + line.carriers.count
    expect([seed, output <= allowed]).toEqual([seed, true])
    if (output >= 0.9 * limits[0]!.unitsPerWindow && output > 20) close += 1
    for (const { kind } of limits) kinds.add(kind)
  }
  // limits that are far above everything would hold as well
  expect(close).toBeGreaterThan(near)
  for (const kind of ['station', 'carriers']) expect(kinds).toContain(kind)
})
