import { createSimulator } from '@loopwright/line'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { randomLine } from '../../../../tests/oracle/readAloud/randomLine.ts'
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
    ['pieces that nobody made', JSON.stringify([{ ...result, output: result.output + 1 }])],
    ['hours of another run', JSON.stringify([{ ...result, outputByHour: result.outputByHour.map(() => 0) }])],
    ['instants that are none', JSON.stringify([{ ...result, outputSeconds: [{ x: 1 }] }])],
    ['pushes that are none', JSON.stringify([{ ...result, handlings: [null] }])],
    ['no world', JSON.stringify([{ ...result, replication: -1 }])],
    ['no seed', JSON.stringify([{ ...result, seed: [] }])],
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
    ['zeros', new Uint8Array(8 * layout.length)],
    ['pieces that nobody made', withValue(layout.units, result.output + 1)],
    ['another pace than that of its pieces', withValue(layout.outputPerHour, result.outputPerHour + 1)],
    ['a station longer in a state than the window lasts', withValue(layout.station, row[layout.station]! + 60)],
    ['a zone shorter', withValue(layout.zone, row[layout.zone]! + 60)],
    ['a time below 0', withValue(layout.cause, -1)],
    ['too few bytes', rows.bytesOf([row]).slice(8)],
    ['foreign JSON', bytes('[{"answer":42}] '.repeat(layout.length / 2 + 1)).slice(0, 8 * layout.length)],
  ])('%s: none, and it is run again', (_, wrong) => {
    expect(rows.itemsOf(wrong, 1)).toBeNull()
  })
})

test('runs of 150 random lines come back in both forms, those that stand still or run out of products too', { tags: 'long' }, () => {
  const ends = new Set<string>()
  fc.assert(
    fc.property(randomLine(), (given) => {
      const run = createSimulator(given).run({ seed: '1', replication: 0 })
      ends.add(run.end.reason)
      const [rows, results] = [rowForm(given), resultForm(given)]
      expect(rows.itemsOf(rows.bytesOf([runRow(rowLayout(given), run)]), 1)).not.toBeNull()
      expect(results.itemsOf(results.bytesOf([run]), 1)).not.toBeNull()
    }),
    { seed: 9, numRuns: 150 },
  )
  expect([...ends].toSorted()).toEqual(['end of window', 'gridlock', 'out of products'])
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
