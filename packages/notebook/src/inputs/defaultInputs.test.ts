import { expect, test } from 'vitest'
import { sourceRead } from '../study/sourceRead.ts'
import { defaultInputs } from './defaultInputs.ts'

const YAML = `
format: 1
name: Six zones
question: How many?
warmup: 1 min
length: 10 min
drive: { speed: 30 m/min, reaction: 0.2 s }
carriers: { count: 2, length: 0.8 m }
loop: 6 zones of 1 m
stations:
  S1: { zone: Z02, unload: { takeOff: 5 s }, load: { place: 6 s } }
`

const table = (text: string) => defaultInputs(sourceRead({ scenarioText: text, scenarioFile: 'six.yaml' })!, 'six.yaml')!
const rows = (text: string): string[][] => table(text).rows.map(({ cells }) => [...cells])

test('a field that the file leaves out is told with its default, once, with the number of places', () => {
  const told = rows(YAML)
  expect(told.find(([field]) => field === 'start')).toEqual(['start', 'spread', '–', '1'])
  expect(told.find(([field]) => field === 'turn')).toEqual(['turn', 'none', '–', '6'])
  expect(told.map(([field]) => field)).not.toContain('reaction')
})

test('what the file says is no default any more', () => {
  expect(rows(YAML.replace('length: 0.8 m }', 'length: 0.8 m, start: packed }')).map(([field]) => field)).not.toContain('start')
  expect(rows(YAML.replace(', reaction: 0.2 s', '')).map(([field]) => field)).toContain('reaction')
})

test('the note says where all of it can be seen', () => {
  expect(table(YAML).note).toContain('loopwright resolve six.yaml')
})
