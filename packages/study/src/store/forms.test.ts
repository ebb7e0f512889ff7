import { createSimulator } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { formOf, PASSAGES, resultForm, rowForm } from './forms.ts'
import { rowLayout, runRow } from '../runs/runRow.ts'
import { TaskRunner } from '../runs/task.ts'

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

describe('rows as bytes', () => {
  const rows = rowForm(spec)
  const layout = rowLayout(spec)
  const row = runRow(layout, result)
  const withValue = (column: number, value: number): Uint8Array => rows.bytesOf([row.map((own, index) => (index === column ? value : own))])

  test('come back as they were', () => {
    expect(rows.itemsOf(rows.bytesOf([row, row]), 2)).toEqual([row, row])
    // a run in which nobody went all the way round
    expect(rows.itemsOf(withValue(layout.lapSeconds, Number.NaN), 1)![0]![layout.lapSeconds]).toBeNaN()
  })

  test.each([
    ['half a piece', withValue(layout.units, 0.5)],
    ['another end than there is', withValue(layout.end, 99)],
    ['less than none', withValue(layout.units, -1)],
    ['no number', withValue(layout.outputPerHour, Number.NaN)],
    ['too few bytes', rows.bytesOf([row]).slice(8)],
    ['foreign JSON', bytes('[{"answer":42}] '.repeat(layout.length / 2 + 1)).slice(0, 8 * layout.length)],
  ])('%s: none, and it is run again', (_, wrong) => {
    expect(rows.itemsOf(wrong, 1)).toBeNull()
  })
})

describe('passages as bytes', () => {
  const runner = new TaskRunner()
  runner.learnLine(0, spec)
  const { passages } = runner.perform({ line: 0, carriers: 3, seed: '1', from: 0, to: 2, want: 'passages' })
  const numbers = (...values: readonly number[]): Uint8Array => new Uint8Array(Float64Array.from(values).buffer)

  test('come back as they were', () => {
    expect(passages[0]!.unloadSeconds.length).toBeGreaterThan(10)
    expect(PASSAGES.itemsOf(PASSAGES.bytesOf(passages), 2)).toEqual(passages)
    expect(formOf(spec, 'passages').itemsOf(new Uint8Array(0), 0)).toEqual([])
  })

  test.each([
    ['no number', bytes('[{"answer":42}]')],
    ['foreign JSON', bytes('[{"answer":42}] ')],
    ['another end than there is', numbers(9, 0, 0)],
    ['less than none', numbers(0, -1, 0)],
    ['fewer than it says', numbers(0, 2, 0, 1)],
    ['more than it says', numbers(0, 1, 0, 1, 2)],
    ['backwards', numbers(0, 2, 0, 5, 4)],
    ['never', numbers(0, 0, 1, Number.POSITIVE_INFINITY)],
    ['too many', PASSAGES.bytesOf(passages)],
  ])('%s: none, and it is run again', (_, wrong) => {
    expect(PASSAGES.itemsOf(wrong, 1)).toBeNull()
  })
})
