import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { OPEN_LINE, RING } from '../../../../tests/helpers/scenarioTexts.ts'
import { watchedLine } from './watchedLine.ts'

test('a loop is drawn as one, any other line by its paths; nothing is shaded', () => {
  for (const [text, isLoop] of [
    [RING, true],
    [OPEN_LINE, false],
  ] as const) {
    const { scenario } = readScenario(text)
    const watched = watchedLine(scenario!)
    expect(watched.plan.paths === null).toBe(isLoop)
    expect(watched.plan.zones.every(({ value }) => value === null)).toBe(true)
    expect(watched.zones).toEqual(scenario!.line.zones.map(({ name }) => name))
    for (const { zone } of watched.stations) expect(watched.zones[zone]).toBeDefined()
  }
})
