import { EventEmitter } from 'node:events'
import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { lineDigest, lineKey } from './job.ts'
import { toldLines } from './toldLines.ts'

/** What a server is for lines: it keeps texts by their keys, and says when it is back. */
function server() {
  const kept: string[] = []
  const emitter = new EventEmitter()
  const set = async (key: string): Promise<'OK'> => {
    kept.push(key)
    return 'OK'
  }
  return { kept, back: () => emitter.emit('ready'), lines: toldLines(Object.assign(emitter, { set }) as never) }
}

test('a line is told once, before the first job that names it, and again to a server that was away', async () => {
  const { kept, back, lines } = server()
  const [one, other] = [stationLoop(), stationLoop({ carriers: { ...stationLoop().carriers, count: 2 } })]
  expect([lines.place(one), lines.place(other), lines.place(one)]).toEqual([0, 1, 0])
  const [first, second] = [lines.at(0), lines.at(1)]
  expect(first.digest).toBe(lineDigest(first.text))
  await lines.tellFor([{ line: second.digest }])
  await lines.tellFor([{ line: second.digest }, { line: first.digest }])
  expect(kept).toEqual([lineKey(second.digest), lineKey(first.digest)])
  back()
  await lines.tellFor([{ line: first.digest }])
  expect(kept).toHaveLength(3)
})
