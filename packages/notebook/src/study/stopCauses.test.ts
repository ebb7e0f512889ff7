import { expect, test } from 'vitest'
import { stopCauses, stopNames } from './stopCauses.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'

const told = testLine((text) =>
  text.replace('tool: {', 'robot red: { title: Red robot, at: S2, after: exponential 40 min, lasts: 60 s }\n  robot blue: {'),
)
const safetyStop = { probability: 0.01, resetSeconds: { kind: 'constant', value: 30 } } as const
/** the same line, with a safety stop */
const scenario = {
  ...told,
  line: {
    ...told.line,
    stations: told.line.stations.map((station) => ({ ...station, safetyStop: station.title === 'Fit' ? safetyStop : null })),
  },
}
const stop = (cause: string, seconds: number) => ({ cause, seconds, count: 1 })

test('stops of one entry are one cause with its places; alike names are not; titles are shown', () => {
  const names = scenario.line.breakdowns.map(({ name }) => name)
  const causes = stopCauses(scenario, [
    ...names.map((name, index) => stop(name, 10 * (index + 1))),
    stop('break', 600),
    stop('safety stop S2', 5),
  ])
  expect(causes.map(({ cause }) => cause)).toEqual(['jam', 'Red robot', 'robot blue', 'break', 'safety stop at Fit'])
  expect(causes[0]).toMatchObject({ count: 3, seconds: 60 })
  expect(causes[0]!.places!.map(({ place }) => place)).toEqual(['Load and unload', 'Fit', 'Test'])
})

test('stops are called as causes are', () => {
  expect(stopNames(scenario)).toEqual(['jam', 'Red robot', 'robot blue', 'safety stop at Fit'])
})
