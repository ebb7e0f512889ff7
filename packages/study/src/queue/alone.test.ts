import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { callingThread } from '../runs/callingThread.ts'
import type { Task } from '../runs/task.ts'
import { alone } from './alone.ts'

const spec = stationLoop()
const task: Task = { line: 0, carriers: 3, seed: '2', from: 4, to: 7, want: 'rows' }
/** Processes that this one has started for jobs alone, as Linux tells: by thread. */
const children = (): number[] =>
  readdirSync('/proc/self/task')
    .flatMap((thread) => readFileSync(`/proc/self/task/${thread}/children`, 'utf8').trim().split(' ').filter(Boolean).map(Number))
    .filter((pid) => readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('aloneProcess'))

test('a job alone gives the bits of any other; one that ends its process is told by the signal, and the next has a new one', {
  tags: 'long',
}, async () => {
  const apart = alone()
  try {
    const here = callingThread()
    const expected = await here.run(0, { ...task, line: here.line(spec) })
    expect((await apart.run(spec, task)).rows).toEqual(expected.rows)
    await expect(apart.run(spec, { ...task, carriers: 99 })).rejects.toThrow(RangeError)
    const endless = apart.run({ ...spec, window: { ...spec.window, endSeconds: 1e9 } }, task)
    const after = apart.run(spec, task)
    await new Promise((resolve) => setTimeout(resolve, 100))
    for (const pid of children()) process.kill(pid, 'SIGKILL')
    await expect(endless).rejects.toThrow('alone in a process, it ended that by signal SIGKILL')
    expect((await after).rows).toEqual(expected.rows)
  } finally {
    apart.close()
  }
})
