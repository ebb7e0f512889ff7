import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { readTable } from '../table/bytes.ts'
import { readTimes } from './readTimes.ts'
import { timeParts, timePartsText } from './timeParts.ts'
import { timeStudy } from './timeStudy.ts'

const CSV = `task,variant,seconds\n${Array.from({ length: 24 }, (_, index) => `wire,small,${40 + ((index * 7) % 13)}\nwire,large,${50 + ((index * 5) % 11)}`).join('\n')}\nseal,,30\n`
const table = readTimes(readTable(new TextEncoder().encode(CSV.replace('seal,,30\n', '')), 'times.csv'))

const lineWith = (work: string): string => `format: 1
question: How many carriers does this loop need?
name: Four zones
warmup: 1 h
length: 8 h
drive: { speed: 15 m/min, acceleration: 0.4 m/s² }
carriers: { count: 2, length: 0.75 m }
loop: 4 zones of 1 m
products: { variants: { small: 1, large: 1 } }
stations:
  S1: { zone: Z01, unload: {}, load: {}, work: { ${work} } }
`

test('by variant, with table, times and curve', () => {
  const [wire] = timeParts(timeStudy(table.observations, { samples: 39 }), { file: 'times.csv' })
  expect(wire!.value).toMatch(/^\{ byVariant: \{ small: .*, large: .* \} \}$/)
  expect(wire!.from).toMatch(/^measured, times\.csv: small: 24 times, .*; large: 24 times, /)
})

test('what is written reads back as the same numbers, from the table itself too', () => {
  const studies = timeStudy(table.observations, { keepValues: true })
  const [written] = timeParts(studies, { file: 'times.csv' })
  const [kept] = timeParts(studies, { file: 'times.csv', column: table.column })
  const values = (value: string, files: (name: string) => string | null = () => null) => {
    const { scenario, problems } = readScenario(lineWith(`wire: ${value}`), { files })
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([])
    return scenario!.line.stations[0]!.work![0]!.seconds
  }
  const asWritten = values(written!.value)
  expect(asWritten).toEqual(values(kept!.value, (name) => (name === 'times.csv' ? CSV : null)))
  expect(asWritten[0]).toMatchObject({ kind: 'empirical' })
})

test('names that would be YAML are in quotes, and line breaks gone', () => {
  expect(timePartsText([{ task: 'a: b # c', value: '1 s', from: 'x' }], ['two\nlines'])).toBe('# two lines\n"a: b # c": 1 s # x\n')
})
