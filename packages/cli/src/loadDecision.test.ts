import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { decisionOf } from '../../../tests/helpers/decisionText.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { loadDecision } from './loadDecision.ts'
import { nodeShell } from './shell/nodeShell.ts'

let folder = ''
const at = (...way: readonly string[]): string => join(folder, ...way)
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'entscheidung ü '))
  mkdirSync(at('meeting', 'lines'), { recursive: true })
  for (const place of ['line.yaml', 'meeting/line.yaml', 'meeting/lines/line.yaml']) writeFileSync(at(place), SMALL_LINE)
})
afterAll(() => rmSync(folder, { recursive: true }))
const shell = nodeShell()
const loaded = async (scenario: string) => {
  writeFileSync(at('meeting', 'decision.yaml'), decisionOf(scenario))
  return await loadDecision(shell, at('meeting', 'decision.yaml'))
}

test('scenarios lie beside the decision or below it, whole paths too', async () => {
  expect((await loaded('line.yaml')).loaded.map(({ file }) => file)).toEqual([at('meeting', 'line.yaml'), at('meeting', 'line.yaml')])
  expect((await loaded('lines/line.yaml')).loaded[0]!.file).toBe(at('meeting', 'lines', 'line.yaml'))
  expect((await loaded(at('meeting', 'line.yaml'))).loaded[0]!.file).toBe(at('meeting', 'line.yaml'))
})

test('scenarios below the folder of the command do as well', async () => {
  const [first] = (await loadDecision(shell, 'scenarios/base-line-decision/base-line.decision.yaml')).loaded
  expect(first!.file).toBe('scenarios/base-line-decision/push-line.yaml')
})

test('scenarios of elsewhere are refused, with what to do', async () => {
  for (const path of ['../line.yaml', at('line.yaml'), '/dev/zero'])
    await expect(loaded(path)).rejects.toMatchObject({
      name: 'Misuse',
      message: expect.stringMatching(
        /outside of its folder and of the one where the command runs; put a copy beside it, or run the command from a folder above both/,
      ),
    })
  await expect(loaded('none.yaml')).rejects.toMatchObject({ name: 'Misuse', message: expect.stringContaining('there is no file') })
})
