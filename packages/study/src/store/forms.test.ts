import { createSimulator } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { resultForm } from './forms.ts'

const spec = stationLoop()
const form = resultForm(spec)
const result = createSimulator(spec).run({ seed: '1', replication: 0 })
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

describe('results as bytes', () => {
  test('come back as they were', () => {
    expect(form.itemsOf(form.bytesOf([result]), 1)).toEqual([JSON.parse(JSON.stringify(result))])
  })

  test.each([
    ['no JSON', '{'],
    ['foreign JSON', '[{"answer":42}]'],
    ['no list', '{"length":1}'],
    ['nothing in it', '[null]'],
    ['too many', JSON.stringify([result, result])],
    ['a station is missing', JSON.stringify([{ ...result, stations: result.stations.slice(1) }])],
    ['a number is missing', JSON.stringify([{ ...result, output: null, events: 'x' }])],
    ['a list is missing', JSON.stringify([{ ...result, handlings: undefined }])],
  ])('%s: none, and it is run again', (_, text) => {
    expect(form.itemsOf(bytes(text), 1)).toBeNull()
  })
})
