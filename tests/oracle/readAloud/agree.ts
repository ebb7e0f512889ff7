/** Whether the engine and the reading aloud say the same of lines, and the smallest line that shows a difference. */
import { type LineSpec, simulate, Trace } from '@loopwright/line'
import { expect } from 'vitest'
import { compare } from './compare.ts'
import { compareTrace } from './compareTrace.ts'
import { readAloud } from './readAloud.ts'
import { smallest } from './smaller.ts'

type Run = ReturnType<typeof readAloud>

/** Every number and every entry that differs; the numbers are those of a run without a trace. */
function differences(
  spec: LineSpec,
  seed: string,
  replication: number,
  { result, log }: Run = readAloud(spec, seed, replication),
): string[] {
  const trace = new Trace()
  simulate(spec, { seed, replication, trace })
  return [...compare(simulate(spec, { seed, replication }), result), ...compareTrace(trace, log)]
}

/** @param runs  the reading aloud of line k, of replication k mod 3 */
export function expectAgreement(lines: readonly LineSpec[], runs: readonly Run[], seed: string): void {
  lines.forEach((spec, index) => {
    const replication = index % 3
    const [first] = differences(spec, seed, replication, runs[index])
    if (first === undefined) return
    const least = smallest(spec, (smaller) => differences(smaller, seed, replication).length > 0)
    expect.fail(
      `line ${index} differs: ${first}\nthe smallest such line: ${JSON.stringify(least, null, 1)}\n${differences(least, seed, replication).join('\n')}`,
    )
  })
}
