import type { LineSpec } from '@loopwright/line'
import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { heldBack, listEndsWarning } from './listEnds.ts'

const words = { one: 'shift', many: 'shifts', line: 'loop' } as const
const base = stationLoop()
/** no station takes off and loads in one stay */
const parted: LineSpec = { ...base, stations: base.stations.map((station) => ({ ...station, load: null })) }
const of = (name: string, outOfProducts: number, line = parted) => ({ name, line, outOfProducts, runs: 30 })

test('nothing is said where no list ran out', () => expect(listEndsWarning('x', [of('a', 0)], words)).toEqual([]))

test('what holds for all runs is said once, else where and how often', () => {
  expect(listEndsWarning('x', [of('a', 30), of('b', 30)], words)[0]!.markdown).toBe(
    'The list of products ran out before the end of the shift. The numbers are those of the list, not of the loop.',
  )
  expect(listEndsWarning('x', [of('8 carriers', 12), of('9 carriers', 0)], words)[0]!.markdown).toBe(
    'The list of products ran out before the end of the shift:\n\n- 8 carriers: in 12 of 30 shifts\n\nThe numbers are those of the list, not of the loop.',
  )
})

test('a station that takes off and loads in one stay keeps the last ones: said once, whatever the lines', () => {
  const both: LineSpec = {
    ...base,
    stations: base.stations.map((station, index) => ({
      ...station,
      load: index === 0 ? [] : null,
      unload: index === 0 ? [] : station.unload,
    })),
  }
  const { markdown } = listEndsWarning('x', [of('a', 30, both), of('b', 30, both)], words)[0]!
  expect(markdown.split(heldBack([both.stations[0]!.name]))).toHaveLength(2)
  expect(heldBack([])).toBe('')
})
