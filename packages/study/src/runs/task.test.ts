import { describe, expect, test } from 'vitest'
import { replicate } from './replicate.ts'
import { rowLayout, runRow } from './runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { TaskRunner } from './task.ts'
import { withCarriers } from '../change/withCarriers.ts'

const spec = stationLoop()
const task = { line: 0, carriers: 4, seed: '9', from: 1, to: 4 }
const runs = (await replicate(withCarriers(spec, 4), { replications: 4 }, { seed: '9', workers: 0 })).slice(1)

describe('a task', () => {
  const runner = new TaskRunner()
  runner.learnLine(0, spec)

  test('gives the runs of its replications, or their rows, or their events too', () => {
    expect(runner.perform({ ...task, want: 'results' }).results).toEqual(runs)
    expect(runner.perform({ ...task, want: 'rows' }).rows).toEqual(runs.map((run) => runRow(rowLayout(spec), run)))
    const traced = runner.perform({ ...task, want: 'traces' })
    expect(traced.results).toEqual(runs)
    expect(traced.traces.map((trace) => trace.kinds.length > 1000)).toEqual([true, true, true])
  })

  test('on a simulator used before gives what it gives on a new one', () => {
    runner.perform({ ...task, from: 0, to: 2, seed: 'other', want: 'rows' })
    expect(runner.perform({ ...task, want: 'results' }).results).toEqual(runs)
  })

  test('needs a line that was told', () => expect(() => runner.perform({ ...task, line: 7, want: 'rows' })).toThrow('line 7'))
})
