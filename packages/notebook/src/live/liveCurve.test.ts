import { readScenario } from '@loopwright/scenario'
import { sweepCarriers } from '@loopwright/study'
import { throughput } from '@loopwright/charts'
import { describe, expect, test } from 'vitest'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { carrierSweepStory } from '../sweep/carrierSweepStory.ts'
import { pageData } from '../page/pageData.ts'
import { CURVE_STAGES, curveFigure, isOnlyCount, liveCurve, takenCounts } from './liveCurve.ts'
import { liveSession } from './liveSession.ts'
import type { LiveTold } from './liveTold.ts'
import type { LiveValues } from './liveChanges.ts'

const { scenario } = readScenario(SMALL_LINE)
const request = { counts: [2, 3, 4], replications: 5, plan: null }
const swept = await sweepCarriers(scenario!.line, request, { seed: 'live', workers: 0 })
const { cells } = carrierSweepStory(scenario!, swept, { scenarioFile: 'a.yaml', scenarioText: SMALL_LINE })
const live = pageData(cells).live!

async function curvesOf(values: LiveValues, upTo: number): Promise<Extract<LiveTold, { kind: 'curve' }>[]> {
  const told: Extract<LiveTold, { kind: 'curve' }>[] = []
  const stop = new AbortController()
  await liveSession(live).ask(
    { id: 1, settings: [{ name: 'what if', values }] },
    (each) => {
      if (each.kind === 'curve') told.push(each)
      if (told.length === upTo || (each.kind === 'told' && each.last)) stop.abort()
    },
    stop.signal,
  )
  return told
}

describe('the curve beside a change', () => {
  test('what travels along is the cell that shows it, its means and its axis', () => {
    const { up } = throughput(swept, { per: 'shift' }).drawing
    expect(live.curve).toMatchObject({ cell: 'counts', per: 'shift', choice: 'carriers', ghost: { span: [up.from, up.to] } })
    expect(live.curve!.ghost.counts.map(({ carriers }) => carriers)).toEqual([2, 3, 4])
  })

  test('is that of a sweep of the changed line, told with more and more replications', async () => {
    const values = { 'A.time': '50 s' }
    const told = await curvesOf(values, 2)
    const changed = liveSession(live).read(values).scenario!
    for (const [stage, { figure, carriers, simulated }] of told.entries()) {
      const replications = CURVE_STAGES[stage]!
      const asked = { ...request, replications, plan: changed.plan?.unitsPerWindow ?? null }
      const same = await sweepCarriers(changed.line, asked, { seed: 'live', workers: 0 })
      expect(figure).toEqual(curveFigure(live.curve!, changed, same))
      expect([carriers, simulated]).toEqual([4, `${replications} shifts of each count`])
    }
    expect(told).toHaveLength(2)
  })

  test('the number of carriers alone leaves it as it is, and marks that number', async () => {
    expect(await curvesOf({ carriers: '3' }, 1)).toMatchObject([{ figure: null, carriers: 3 }])
    expect([isOnlyCount({ 'carriers.count': '3' }), isOnlyCount({ plan: '3 per shift' })]).toEqual([true, false])
  })

  test('as long as nothing is set there is none to draw', async () => {
    expect(await curvesOf({}, 1)).toEqual([])
  })

  test('counts that the changed line cannot take are left out', () => {
    const small = scenario!.line
    const zones = {
      ...live.curve!,
      ghost: { ...live.curve!.ghost, counts: [2, small.zones.length + 1].map((carriers) => ({ carriers, units: 1 })) },
    }
    expect(takenCounts(zones, small)).toEqual([2])
  })
})

test('a count of which runs stood still has no mean of both kinds', () => {
  const still = { ...swept.counts[0]!, gridlocks: 1 }
  expect(liveCurve([still], throughput(swept), { per: 'shift', choice: 'carriers', named: null }).ghost.counts).toEqual([
    { carriers: 2, units: null },
  ])
})
