import { carrierStays, traceRun } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { shownView } from '../cells/cell.ts'
import { carriersPlan } from './carriersPlan.ts'

const scenario = testLine()
const traced = (await traceRun(scenario.line, { replication: 0 }, { seed: '1', workers: 0 }))!
const stays = carrierStays(traced.trace, scenario.line)

test.each([0, 7200, 8100.5])('%d s into the run each carrier is drawn once, in the zone of its stay', (at) => {
  const { picture, table, alt } = shownView(carriersPlan(scenario, stays, at, '08:00').views)
  const drawn =
    picture.kind === 'plan' ? picture.zones.flatMap(({ name, carrier }) => (carrier === undefined ? [] : [`${carrier} ${name}`])) : []
  const expected = stays
    .filter(({ enterSeconds, leaveSeconds }) => enterSeconds <= at && (leaveSeconds ?? Number.POSITIVE_INFINITY) > at)
    .map(({ carrier, zone }) => `${carrier} ${scenario.line.zones[zone]!.name}`)
  expect(drawn.toSorted()).toEqual(expected.toSorted())
  expect(new Set(drawn.map((each) => each.split(' ')[0])).size).toBe(scenario.line.carriers.count)
  expect(table.rows.length).toBe(drawn.length)
  expect(alt).toContain('Carriers: ')
})

test('of those who are shown, the ones in stations are named first', () => {
  const finding = shownView(carriersPlan(scenario, stays, 7200, '08:00').views).finding
  expect(finding).toMatch(/^At 08:00 \d of 4 carriers on the line (is|are) in a station/)
})
