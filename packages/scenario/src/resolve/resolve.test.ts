import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../read.ts'

test('a scenario has name, question, line, plan, calendar and turns', () => {
  const { scenario, problems } = readScenario(scenarioText())
  expect(problems).toEqual([])
  expect(scenario).toMatchObject({ name: 'Ten zones', question: 'What does this loop make?', plan: null, calendar: null })
  expect(scenario?.layout.turns).toEqual(Array(10).fill(null))
  expect(Object.keys(scenario?.line ?? {})).toEqual([
    ...['inspections', 'rework', 'operators', 'walks', 'supply', 'repairCrews', 'sections'],
    ...['zones', 'paths', 'carriers', 'reactionSeconds', 'staggerSeconds', 'stations', 'tasks', 'variants', 'mix'],
    ...['breakdowns', 'breaks', 'conveyorDuringBreaks', 'window'],
  ])
})

test('notes tell what was understood', () => {
  const corners = 'corners: { zones: [Z03, Z06], turn: left, lift: 1 s, lower: 1 s, enterOnlyIfExitClear: true }'
  const { notes } = readScenario(
    scenarioText(['', corners], ['', 'plan: 72 per clock hour'], ['', 'variations: { more: { carriers.count: 5 } }']),
  )
  expect(notes).toMatchObject({
    transferZoneNames: ['Z03', 'Z06'],
    storageZones: 8,
    variants: [{ name: 'product', variant: 'product', options: [], share: 1 }],
    warmupSeconds: 3600,
    windowSeconds: 28_800,
    netSeconds: 28_800,
    taktSeconds: 50,
    variations: ['more'],
  })
  expect(notes?.stations[1]).toEqual({ name: 'Fit', title: 'Fit', zone: 'Z04', meanWorkSeconds: 40, meanReleaseSeconds: 0 })
})

test('an empty name or question is a missing one', () => {
  expect(readScenario(scenarioText(['name: Ten zones', 'name: " "'])).problems).toMatchObject([{ code: 'E_MISSING', path: 'name' }])
})

test('findings of all steps come together', () => {
  const { problems } = readScenario(
    scenarioText(['1 h', '1'], ['12 m/min', 'fast'], ['count: 4', 'count: 40'], ['Z04', 'Z40'], ['40 s', '40 kg']),
  )
  expect(problems.map((problem) => problem.code)).toEqual([
    'E_BARE_NUMBER',
    'E_NOT_A_QUANTITY',
    'E_CARRIERS_FILL',
    'E_UNKNOWN_ZONE',
    'E_UNIT_UNKNOWN',
  ])
})
