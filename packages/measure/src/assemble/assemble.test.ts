import { readFileSync } from 'node:fs'
import { readScenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { mixStudy } from '../mix/mixStudy.ts'
import { stopStudy } from '../stops/stopStudy.ts'
import { workingHours } from '../stops/workingHours.ts'
import { timeStudy } from '../times/timeStudy.ts'
import { assemble, type MeasuredData } from './assemble.ts'

const skeleton = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')
const NONE: MeasuredData = { times: null, stops: null, mix: null }
const VARIANTS = ['small', 'medium', 'large', 'coastal']
const observed = (task: string, variant: string | null) =>
  Array.from({ length: 6 }, (_, index) => ({
    task,
    variant,
    operator: null,
    observedSeconds: 50 + index,
    rating: null,
    when: null,
    line: index + 2,
    place: '',
  }))
const times = (task: string, variants: readonly (string | null)[]) => ({
  times: { studies: timeStudy(variants.flatMap((variant) => observed(task, variant))), source: { file: 'times.csv' } },
})
const order = (product: string, options: string[] = []) => ({ product, options, units: 5, when: null, timed: false, line: 2 })

test('times, stops and orders go to their places, with where they come from; the rest stays', () => {
  const stops = [1, 2, 3, 4].map((index) => ({
    place: 's6',
    cause: 'Tester fault',
    start: index * 7200,
    end: index * 7200 + 600,
    line: index + 1,
  }))
  const data: MeasuredData = {
    ...times('Wire', VARIANTS),
    stops: { study: stopStudy(stops, { from: 0, to: 36_000 }), file: 'stops.csv' },
    mix: {
      study: mixStudy([...VARIANTS.map((name) => order(name)), order('small', ['coldKit']), order('large', ['quietKit'])]),
      file: 'orders.csv',
    },
  }
  const { text, faults, notes } = assemble(skeleton, data)
  expect(faults).toEqual([])
  const { scenario, problems } = readScenario(text!)
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([])
  const { line } = scenario!
  const wiring = line.stations.find(({ name }) => name === 'S4')!.work![0]!.seconds
  expect(wiring[0]).toMatchObject({ kind: 'lognormal', mean: 52.5 })
  // the option adds its time to the measured one
  expect(wiring[line.variants.indexOf('small + coldKit')]).toMatchObject({ mean: 68.5 })
  expect(line.breakdowns.find(({ name }) => name === 'testFault')).toMatchObject({
    timeToFailureSeconds: { kind: 'exponential', mean: 8400 },
  })
  expect(line.breakdowns).toHaveLength(readScenario(skeleton).scenario!.line.breakdowns.length)
  expect(text).toContain('# measured, times.csv: small: 6 times')
  expect(text).toContain('# ordered, orders.csv: 30 units')
  expect(notes.join(' ')).toContain("Not measured, so the skeleton's times stand: setBasePan, fitPipes, join, fitFanDeck, test, takeOff.")
})

test('what the stop log leaves open is noted', () => {
  const stop = (line: number, start: number, end: number) => ({ place: 's6', cause: 'tester', start, end, line })
  const hours = workingHours('06:00-14:00')
  if (!hours.ok) throw new Error(hours.reason)
  const study = stopStudy([stop(2, 7 * 3600, 8 * 3600), stop(3, 7.5 * 3600, 9 * 3600), stop(4, 15 * 3600, 16 * 3600)], {
    hours: hours.value,
  })
  const notes = assemble(skeleton, { ...NONE, stops: { study, file: 'stops.csv' } }).notes.join(' ')
  expect(notes).toContain('Nobody said when the stop log began and ended')
  expect(notes).toContain('outside the working hours (--hours) do not count: lines 4.')
  expect(notes).toContain('of one cause count once: lines 2 with 3.')
})

test('far times that make the mean another one are noted', () => {
  const seconds = [46, 47, 48, 49, 50, 51, 52, 53, 54, 402]
  const studies = timeStudy(
    observed('wire', null)
      .slice(0, 1)
      .flatMap((one) => seconds.map((observedSeconds, line) => ({ ...one, observedSeconds, line }))),
  )
  const { notes } = assemble(skeleton, { ...NONE, times: { studies, source: { file: 'times.csv' } } })
  expect(notes).toContain(
    'Times of "wire" lie far from the others and are kept (line 9: 402 s): with them the mean is 85.2 s, without 50 s.',
  )
  const near = timeStudy(observed('wire', null))
  expect(assemble(skeleton, { ...NONE, times: { studies: near, source: { file: 't' } } }).notes.join()).not.toContain('far from')
})

test('a time for all variants', () => {
  const { text } = assemble(skeleton, { ...NONE, ...times('wire', [null]) })
  const wiring = readScenario(text!).scenario!.line.stations.find(({ name }) => name === 'S4')!.work![0]!.seconds
  expect(wiring.filter((one) => one!.kind === 'lognormal').length).toBe(wiring.length)
})

describe('what does not fit is told, all at once, and nothing is written', () => {
  test.each<[string, MeasuredData, string]>([
    [
      'a task',
      { ...NONE, ...times('wrie', VARIANTS) },
      'times of "wrie": no station of the skeleton has such a task; did you mean "wire"?',
    ],
    [
      'a variant too many',
      { ...NONE, ...times('wire', [...VARIANTS, 'huge']) },
      'times of "wire": the skeleton has no variant "huge"; it has small, medium, large, coastal',
    ],
    [
      'a variant too few',
      { ...NONE, ...times('wire', ['small', 'large']) },
      'times of "wire": none of "medium", "coastal"; time them, or leave the column of variants out',
    ],
    [
      'two names of one task',
      { ...NONE, times: { studies: timeStudy([...observed('wire', null), ...observed('Wire', null)]), source: { file: 't.csv' } } },
      'times of "wire" and "Wire": all are the task "wire" of the skeleton; write one name in the tables',
    ],
    [
      'two names of one variant',
      { ...NONE, ...times('wire', [...VARIANTS, 'Small']) },
      'times of "wire", variants "small" and "Small": all are "small" of the skeleton; write one name in the tables',
    ],
    [
      'a place',
      { ...NONE, stops: { study: stopStudy([{ place: 'Oven', cause: 'x', start: 0, end: 600, line: 2 }]), file: 's.csv' } },
      'stops at "Oven": the skeleton has no such place',
    ],
    [
      'a product',
      { ...NONE, mix: { study: mixStudy([order('huge')]), file: 'o.csv' } },
      'orders of "huge": the skeleton has no such product',
    ],
    [
      'a product that nobody orders',
      { ...NONE, mix: { study: mixStudy(['small', 'medium', 'large'].map((name) => order(name))), file: 'o.csv' } },
      'no order is of "coastal", which the skeleton has',
    ],
  ])('%s', (_, data, fault) => {
    const { text, faults } = assemble(skeleton, data)
    expect([text, faults.length]).toEqual([null, 1])
    expect(faults[0]).toContain(fault)
  })
  test('products of a skeleton that names none', () => {
    const plain = skeleton
      .replace(/^products:[\s\S]*?\n\n/m, '')
      .replaceAll(/\{ cv: (\S+ %), mean: \{ small: (\S+ s)[^}]*\} \}/g, '$2 ± $1')
    const { faults } = assemble(plain, { ...NONE, ...times('wire', ['small']), mix: { study: mixStudy([order('small')]), file: 'o.csv' } })
    expect(faults).toEqual([
      'orders of "small": the skeleton has no such product; it has product alone: name them in the skeleton, such as "products: { variants: { small: 60 %, large: 40 % } }"',
      'times of "wire": the skeleton has no variant "small"; it has product alone: name them in the skeleton, such as "products: { variants: { small: 60 %, large: 40 % } }"',
    ])
  })
  test('a skeleton that does not read', () => expect(assemble('format: 1', NONE).faults[0]).toMatch(/^the skeleton, line \d+: /))
})

test('a stop that comes on top of one of the skeleton is told', () => {
  const study = stopStudy(
    [1, 2, 3].map((index) => ({ place: 'S3', cause: 'glue', start: index * 3600, end: index * 3600 + 400, line: index + 1 })),
  )
  expect(assemble(skeleton, { ...NONE, stops: { study, file: 's.csv' } }).notes).toContain(
    'At S3 the skeleton has stops already (joiningTool, shortStop): "glue" comes on top of them.',
  )
})
