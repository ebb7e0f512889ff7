/** What examples may name beside the public names of all packages: a line, a scenario, measured times, and the effects of a notebook that writes nothing. */
import { readScenario } from '@loopwright/scenario'
import { decisionRuns, madeUpTrials, promiseRuns } from '../helpers/decisionRuns.ts'
import { RING } from '../helpers/scenarioTexts.ts'
import { stationLoop } from '../helpers/stationLoop.ts'
import { DOORS } from '../tidy/imports.ts'

/** Packages whose examples are run, each after those that it stands on. */
export const EXECUTED = ['kernel', 'stats', 'line', 'scenario', 'measure', 'study', 'decide', 'charts', 'notebook']

const GIVEN: Readonly<Record<string, unknown>> = {
  /** a closed loop of eight zones: loading, work and unloading, a jam now and then */
  line: stationLoop(),
  /** a scenario file, and what it says: a ring of ten zones */
  text: RING,
  scenario: readScenario(RING).scenario,
  /** alternatives of a decision, each simulated twice */
  runs: await decisionRuns(2),
  /** what is promised of one of them, and trials of an acceptance */
  promised: await promiseRuns(12),
  trials: madeUpTrials(),
  /** seconds, as measured by hand */
  times: [41, 38, 45, 52, 39, 43, 47, 61, 40, 44, 50, 42, 37, 48, 55, 46, 43, 41, 49, 58, 36, 44, 45, 51, 40],
  effects: {
    readFile: async () => RING,
    writeFile: async () => {},
    importModule: async () => ({}),
    log: () => {},
    progress: () => {},
    now: () => new Date(0),
    signal: new AbortController().signal,
  },
}

/** Public names of all packages up to this one, its own last, and what is given to examples. */
export async function scopeOf(name: string): Promise<Record<string, unknown>> {
  const scope: Record<string, unknown> = { ...GIVEN }
  const others = EXECUTED.slice(0, Math.max(EXECUTED.indexOf(name), EXECUTED.indexOf('study') + 1)).filter((other) => other !== name)
  for (const each of [...others, name])
    for (const door of ['', ...(DOORS[each] ?? []).map((way) => `/${way}`)])
      Object.assign(scope, await import(`@loopwright/${each}${door}`))
  return scope
}
