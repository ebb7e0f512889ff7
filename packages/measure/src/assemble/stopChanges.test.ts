import { readFileSync } from 'node:fs'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { stopStudy } from '../stops/stopStudy.ts'
import { assemble } from './assemble.ts'
import { stopChanges } from './stopChanges.ts'

const skeleton = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')

const stopsOf = (place: string, cause: string, minutes: readonly number[], from = 0) =>
  minutes.map((lasts, index) => ({
    place,
    cause,
    start: from + index * 7200,
    end: from + index * 7200 + 60 * lasts,
    line: from + index + 2,
  }))
const logged = (...stops: ReturnType<typeof stopsOf>[]) => {
  const study = stopStudy(stops.flat(), { from: 0, to: 200_000 })
  const { text, notes, faults } = assemble(skeleton, { times: null, mix: null, stops: { study, file: 'stops.csv' } })
  expect(faults).toEqual([])
  return { notes, scenario: readScenario(text!).scenario! }
}

test('short and long stops of one cause are two stops, of which the first takes the place and the title of the skeleton’s', () => {
  const { scenario, notes } = logged(stopsOf('S6', 'tester fault', [8, 9, 10, 2, 1, 2]))
  const { breakdowns } = scenario.line
  const mean = (name: string) => breakdowns.find((one) => one.name === name)?.timeToFailureSeconds
  // 32 minutes of standing are no time in which it could fail
  expect(mean('testFault')).toEqual({ kind: 'exponential', mean: 66_026.7 })
  expect(mean('S6 tester fault short')).toEqual({ kind: 'exponential', mean: 66_026.7 })
  expect(scenario.stopEntries.find(({ name }) => name === 'testFault')!.title).toBe('Tester fault')
  expect(notes).toContain("Not logged, so the skeleton's stops stand: pipeTool, joiningTool, transferFault, shortStop.")
})

test('a cause that is logged at another place leaves the stop of the skeleton where it is', () => {
  const { scenario, notes } = logged(stopsOf('S3', 'tester fault', [8, 9, 10]))
  const { stations, breakdowns } = scenario.line
  const at = (name: string) => stations[breakdowns.find((one) => one.name === name)!.part.index]!.name
  expect([at('testFault'), at('S3 tester fault')]).toEqual(['S6', 'S3'])
  expect(notes).toContain('At S3 the skeleton has stops already (joiningTool, shortStop): "tester fault" comes on top of them.')
})

test('one cause at several places: what stood everywhere is what was logged, at each place its own', () => {
  const { scenario } = logged(stopsOf('S3', 'short stop', [1, 1, 1]), stopsOf('S4', 'short stop', [1, 1, 1], 600))
  const names = scenario.line.breakdowns.map(({ name }) => name)
  expect(names.filter((name) => /short/i.test(name))).toEqual(['shortStop', 'S4 short stop short'])
})

test('a part whose key is taken gets another one; stops that are no part of the log stand', () => {
  const { scenario } = readScenario(skeleton)
  const notes: string[] = []
  const study = stopStudy([...stopsOf('S3', 'a b', [8, 9, 10]), ...stopsOf('S3', 'a/b', [8, 9, 10], 600)], { from: 0, to: 200_000 })
  const changes = stopChanges(scenario!, { study, file: 'stops.csv' }, [], notes)
  expect(changes.map(({ path }) => path)).toEqual(['stops.S3 a b', 'stops.S3 a b 2'])
  expect(notes.join(' ')).toContain(
    "Not logged, so the skeleton's stops stand: pipeTool, joiningTool, testFault, transferFault, shortStop.",
  )
})
