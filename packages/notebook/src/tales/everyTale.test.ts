/** Every tale there is, on a loop and on an open line: the terminal, the page and the files of tables hold the same. */
import { readFileSync } from 'node:fs'
import { readScenario, type Scenario, stopGroups } from '@loopwright/scenario'
import {
  carrierStays,
  chooseCarriers,
  findDrivers,
  findLosses,
  orderStations,
  replicate,
  runsResult,
  sweepCarriers,
  traceRun,
} from '@loopwright/study'
import { compareLines, runGrid } from '@loopwright/study/compare'
import { taskBalance } from '@loopwright/study/change'
import { describe, expect, test } from 'vitest'
import { balanceStory } from '../balance/balanceStory.ts'
import { carrierSweepStory } from '../sweep/carrierSweepStory.ts'
import { checkStory } from '../check/checkStory.ts'
import { compareStory } from '../compare/compareStory.ts'
import { driverStory } from '../drivers/driverStory.ts'
import { forecast } from '../forecast/forecast.ts'
import { forecastStory } from '../forecast/forecastStory.ts'
import { gridLines } from '../grid/gridLines.ts'
import { gridStory } from '../grid/gridStory.ts'
import { lossStory } from '../losses/lossStory.ts'
import { orderStory } from '../order/orderStory.ts'
import { runsStory } from '../runs/runsStory.ts'
import { keptRuns } from '../../../../tests/helpers/keptRuns.ts'
import { FOUND } from '../../../../tests/helpers/steadyResult.ts'
import { steadyStory } from '../steady/steadyStory.ts'
import { RING } from '../../../../tests/helpers/scenarioTexts.ts'
import type { Tale } from '../cells/tale.ts'
import { missingInFiles, tablesOf } from '../../../../tests/helpers/toldInFiles.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { traceStory } from '../trace/traceStory.ts'

const OPEN = 'test-and-repair-line.yaml'
const SOURCES: Readonly<Record<string, readonly [file: string, text: string]>> = {
  'a loop': ['ring.yaml', RING],
  'an open line': [OPEN, readFileSync(new URL(`../../../../scenarios/${OPEN}`, import.meta.url), 'utf8')],
}
const SEED = { seed: '1' }
const HERE = { ...SEED, workers: 0, store: keptRuns() }

interface Of {
  readonly scenario: Scenario
  readonly file: string
  readonly text: string
  readonly options: { readonly scenarioFile: string }
}

const TALES: Readonly<Record<string, (of: Of) => Promise<Tale> | Tale>> = {
  check: ({ file, text }) => {
    const { scenario, notes, problems } = readScenario(text)
    return checkStory(scenario!, notes!, { scenarioFile: file, scenarioText: text, problems })
  },
  run: async ({ scenario, options }) => {
    const runs = await replicate(scenario.line, { replications: 1 }, HERE)
    return runsStory(scenario, runsResult(scenario.line, runs, { ...SEED, replications: 1, plan: planOf(scenario) }), runs[0]!, options)
  },
  runs: async ({ scenario, options }) => {
    const runs = await replicate(scenario.line, { replications: 5 }, HERE)
    return runsStory(scenario, runsResult(scenario.line, runs, { ...SEED, replications: 5, plan: planOf(scenario) }), null, options)
  },
  sweep: async ({ scenario, options }) => carrierSweepStory(scenario, await sweepOf(scenario, [2, 3, 4]), options),
  carriers: async ({ scenario, options }) => {
    const study = await chooseCarriers(scenario.line, { plan: planOf(scenario), counts: [2, 3, 4], replicationsMax: 40 }, HERE)
    return carrierSweepStory(scenario, study, options)
  },
  forecast: async ({ scenario, options }) => {
    const sweep = await sweepOf(scenario, [4])
    const netSeconds = scenario.calendar?.netSeconds ?? scenario.line.window.endSeconds - scenario.line.window.warmupSeconds
    const made = forecast(sweep.counts[0]!.units, { plan: planOf(scenario), netSeconds, shiftsPerWeek: 2 })
    return forecastStory(scenario, { kind: 'forecast', sweep, ...made }, options)
  },
  compare: async ({ scenario, options }) => {
    const line = (name: string, of: Scenario) => ({ name, line: of.line, plan: planOf(of) })
    const fewer = { ...scenario, line: { ...scenario.line, carriers: { ...scenario.line.carriers, count: 3 } } }
    const lines = [line('today', scenario), line('one fewer', fewer)]
    return compareStory([scenario, fewer], await compareLines(lines, { replications: 4 }, HERE), options)
  },
  grid: async ({ scenario, text, options }) => {
    const source = { scenario, text, files: () => null }
    const { factors, points } = gridLines(source, { carriers: [3, 4], set: { 'drive.speed': ['15 m/min', '20 m/min'] } })
    const base = { line: scenario.line, plan: planOf(scenario) }
    return gridStory(scenario, await runGrid(points, { factors, base, replications: 3 }, HERE), options)
  },
  drivers: async ({ scenario, options }) => driverStory(scenario, await findDrivers(scenario.line, { replications: 3 }, HERE), options),
  steady: ({ scenario, options }) => steadyStory(scenario, FOUND, options),
  trace: async ({ scenario, options }) => {
    const traced = (await traceRun(scenario.line, { replication: 0 }, SEED))!
    return traceStory(scenario, carrierStays(traced.trace, scenario.line), { ...options, fromSeconds: 7200, toSeconds: 8100 })
  },
}

/** of a single loop alone */
const LOOP_TALES: typeof TALES = {
  losses: async ({ scenario, options }) => {
    const request = { replications: 3, stopGroups: stopGroups(scenario), bestCarriers: 4 }
    return lossStory(scenario, await findLosses(scenario.line, request, HERE), options)
  },
  order: async ({ scenario, options }) => {
    const request = { move: [1], zones: [3, 4, 5], firstStage: 10, check: 6, mine: [0, 4, 6] }
    return orderStory(scenario, await orderStations(scenario.line, request, HERE), options)
  },
  balance: () => {
    const tasks = ['frame', 'motor', 'cover'].map((name, index) => ({ name, seconds: 3.5 + index, after: [] }))
    return balanceStory(tasks, taskBalance(tasks, { stations: 2 }), { stations: 2 })
  },
}

const planOf = ({ plan }: Scenario): number => plan!.unitsPerWindow
const sweepOf = ({ line, plan }: Scenario, counts: readonly number[]) =>
  sweepCarriers(line, { counts, replications: 5, plan: plan!.unitsPerWindow }, HERE)

describe.each(Object.entries(SOURCES))('%s', { tags: 'long' }, (name, [file, text]) => {
  const { scenario } = readScenario(text)
  const of: Of = { scenario: scenario!, file, text, options: { scenarioFile: file } }
  const tales = name === 'a loop' ? { ...TALES, ...LOOP_TALES } : TALES

  test.each(Object.entries(tales))('%s', async (_, tell) => {
    const { cells } = await tell(of)
    expect(toldTwice(cells)).toEqual(TOLD_TWICE)
    expect(missingInFiles(cells)).toEqual([])
    expect(tablesOf(cells).length).toBeGreaterThan(0)
    for (const [id, { caption, columns }] of tablesOf(cells)) {
      expect(caption, id).not.toBe('')
      for (const { head } of columns) expect(head.trim(), `${id}: ${caption}`).not.toBe('')
    }
  })
})
