import { TRACE_KINDS } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { replicate } from './replicate.ts'
import { rowLayout, runRow } from './runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { type EventWish, TaskRunner } from './task.ts'
import { withCarriers } from '../change/withCarriers.ts'

const spec = stationLoop()
const task = { line: 0, carriers: 4, seed: '9', from: 1, to: 4 }
const runs = (await replicate(withCarriers(spec, 4), { replications: 4 }, { seed: '9', workers: 0 })).slice(1)

describe('a task', () => {
  const runner = new TaskRunner()
  runner.learnLine(0, spec)

  test('gives the runs of its replications, or their rows, when products came and went, or their events too', () => {
    expect(runner.perform({ ...task, want: 'results' }).results).toEqual(runs)
    expect(runner.perform({ ...task, want: 'rows' }).rows).toEqual(runs.map((run) => runRow(rowLayout(spec), run)))
    const traced = runner.perform({ ...task, want: 'traces' })
    expect(traced.results).toEqual(runs)
    expect(traced.traces.map((trace) => trace.kinds.length > 1000)).toEqual([true, true, true])
    const { passages } = runner.perform({ ...task, want: 'passages' })
    expect(passages.map(({ end }) => end)).toEqual(runs.map(({ end }) => end.reason))
    const counted = (seconds: Float64Array): number => seconds.filter((each) => each > spec.window.warmupSeconds).length
    expect(passages.map(({ unloadSeconds }) => counted(unloadSeconds))).toEqual(runs.map(({ output }) => output))
    expect(passages.map(({ loadSeconds }) => counted(loadSeconds))).toEqual(runs.map(({ loads }) => loads))
  })

  test('on a simulator used before gives what it gives on a new one', () => {
    runner.perform({ ...task, from: 0, to: 2, seed: 'other', want: 'rows' })
    expect(runner.perform({ ...task, want: 'results' }).results).toEqual(runs)
  })

  test('needs a line that was told', () => expect(() => runner.perform({ ...task, line: 7, want: 'rows' })).toThrow('line 7'))
})

test('of a trace only the stretch and the kinds that are wished for are kept', () => {
  const runner = new TaskRunner()
  runner.learnLine(0, spec)
  const traced = (events: EventWish) => runner.perform({ line: 0, carriers: 3, seed: '1', from: 0, to: 1, want: 'traces', events })
  const [all, some] = [traced({}), traced({ fromSeconds: 200, toSeconds: 400, kinds: [TRACE_KINDS.indexOf('rest')] })]
  const wanted = [...(all.traces[0]!.kinds as readonly number[])].flatMap((kind, k) => {
    const seconds = all.traces[0]!.seconds[k]!
    return TRACE_KINDS[kind] === 'rest' && seconds >= 200 && seconds <= 400 ? [seconds] : []
  })
  expect(wanted.length).toBeGreaterThan(5)
  expect(some.traces[0]!.seconds).toEqual(wanted)
  expect(some.results).toEqual(all.results)
})

test('more events than can be kept are refused with the stretch that they fill', { tags: 'long' }, () => {
  const runner = new TaskRunner()
  runner.learnLine(0, { ...spec, breakdowns: [], breaks: [], window: { warmupSeconds: 0, endSeconds: 1e8 } })
  const task = { line: 0, carriers: 3, seed: '1', from: 0, to: 1, want: 'traces' } as const
  expect(() => runner.perform(task)).toThrow(
    /^from \d.* s to [\d.e+]+ s there are more than 2000000 events, .*: ask for a shorter stretch of time$/,
  )
})
