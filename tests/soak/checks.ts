/** What the soak does with one number: a line or a wrong scenario made from it, and what is wrong with how the product takes it. */
import { type LineSpec, simulate, Trace } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import fc from 'fast-check'
import { anyLine } from '../helpers/anyLine.ts'
import { lively } from '../helpers/lively.ts'
import { compare } from '../oracle/readAloud/compare.ts'
import { compareTrace } from '../oracle/readAloud/compareTrace.ts'
import { generalFrom } from '../oracle/readAloud/generalLine.ts'
import { lineFrom } from '../oracle/readAloud/randomLine.ts'
import { readAloud } from '../oracle/readAloud/readAloud.ts'
import { smallest } from '../oracle/readAloud/smaller.ts'

export interface Finding {
  readonly what: string
  /** the smallest line that shows it, or the text of the scenario */
  readonly shown: string
}

export const KINDS = [
  'a loop against the reading aloud',
  'a general line against the reading aloud',
  'any line',
  'a wrong scenario',
] as const
export type Kind = (typeof KINDS)[number]

const SEED = 'soak'
/** milliseconds of work that reading a scenario may take; how long others keep the machine busy meanwhile is not counted */
const READ_MAX = 1000

/**
 * null: nothing is wrong.
 *
 * @param small  whether a line that is found is made as small as it goes, which takes most of the time
 */
export function check(kind: Kind, number: number, scenarios: readonly string[], small: boolean): Finding | null {
  if (kind === 'a wrong scenario') return scenarioFault(number, scenarios)
  const faults = kind === 'any line' ? invariantFaults : agreementFaults
  const line = lineOf(kind, number)
  const what = faults(line)
  if (what === null) return null
  return { what, shown: JSON.stringify(kind === 'any line' || !small ? line : smallest(line, (smaller) => faults(smaller) !== null)) }
}

function lineOf(kind: Kind, number: number): LineSpec {
  if (kind === 'any line') return lively(fc.sample(anyLine, { seed: number, numRuns: 1 })[0]!)
  return kind === 'a loop against the reading aloud' ? lineFrom(number) : generalFrom(number)
}

/** The engine with all its checks, its own opposite storing order, the recursion, and the second program. */
function agreementFaults(line: LineSpec): string | null {
  const own = invariantFaults(line)
  if (own !== null) return own
  const trace = new Trace()
  simulate(line, { seed: SEED, replication: 0, trace, engine: 'events' })
  const { result, log } = readAloud(line, SEED, 0)
  const [first] = [...compare(simulate(line, { seed: SEED, replication: 0 }), result), ...compareTrace(trace, log)]
  return first ?? null
}

function invariantFaults(line: LineSpec): string | null {
  try {
    const [trace, again] = [new Trace(), new Trace()]
    const run = { seed: SEED, replication: 0 }
    const told = simulate(line, { ...run, trace, verify: true })
    const backwards = simulate(line, { ...run, trace: again, verify: true, backwards: true })
    if (again.hash.digest() !== trace.hash.digest()) return 'the order in which simultaneous timers are stored shows in the trace'
    if (JSON.stringify(backwards) !== JSON.stringify(told)) return 'the order in which simultaneous timers are stored shows in the result'
    const plain = (['auto', 'events'] as const).every(
      (engine) => JSON.stringify(simulate(line, { ...run, engine })) === JSON.stringify(told),
    )
    return plain ? null : 'a run without checks and trace gives other numbers'
  } catch (error) {
    return (error as Error).message
  }
}

/** A scenario that comes with the product, spoilt in one to three places. */
function scenarioFault(number: number, scenarios: readonly string[]): Finding | null {
  const random = randomOf(number)
  const whole = (below: number): number => Math.floor(random() * below)
  let text = scenarios[whole(scenarios.length)]!
  for (let spoils = 1 + whole(3); spoils > 0; spoils--) text = spoil(text, whole)
  const start = process.cpuUsage()
  try {
    const { scenario, problems } = readScenario(text)
    const { user, system } = process.cpuUsage(start)
    const milliseconds = (user + system) / 1000
    if (milliseconds > READ_MAX) return { what: `reading takes ${milliseconds.toFixed(0)} ms`, shown: text }
    if (scenario === null && problems.length === 0) return { what: 'no scenario, and no word why', shown: text }
    const lost = problems.find(({ line, column }) => !(line >= 1 && column >= 1))
    return lost === undefined ? null : { what: `a finding without a place: ${lost.code}`, shown: text }
  } catch (error) {
    return { what: `an error is thrown: ${(error as Error).message}`, shown: text }
  }
}

const WORDS = [
  '',
  '-',
  '1e999',
  'NaN',
  '1,5 m',
  '-3 s',
  '{',
  ']',
  'null',
  '*a',
  '&a',
  '2026-01-01',
  '"',
  '0',
  'Z99',
  '40 %',
  ': ',
  '\t',
  '# ',
  '12',
  'store',
  '[]',
  '{}',
]

/** Takes out, doubles or puts in a piece. */
function spoil(text: string, whole: (below: number) => number): string {
  const pieces = text.split(/(\s+|[,:{}[\]])/)
  const at = whole(pieces.length)
  const piece = [[], [pieces[at]!, pieces[at]!], [WORDS[whole(WORDS.length)]!], [pieces[at]!, WORDS[whole(WORDS.length)]!]][whole(4)]!
  return [...pieces.slice(0, at), ...piece, ...pieces.slice(at + 1)].join('')
}

function randomOf(seed: number): () => number {
  let x = (seed % 2147483646) + 1
  return () => {
    x = (x * 48271) % 2147483647
    return x / 2147483647
  }
}
