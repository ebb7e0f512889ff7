import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const CSV = 'task;seconds\nfit;38,5\nfit;41\nfit;\n'

function read(time: string, files?: (name: string) => string | null) {
  const { scenario, problems } = readScenario(scenarioText(['40 s ± 10 %', time]), files === undefined ? {} : { files })
  return scenario?.line.stations[1]?.work?.[0]?.seconds[0] ?? problems.map((problem) => problem.code)
}

test('a column of a file, empty cells left out, with its unit', () => {
  const time = '{ kind: replay, file: study.csv, column: seconds, unit: s }'
  expect(read(time, (name) => (name === 'study.csv' ? CSV : null))).toEqual({ kind: 'replay', values: [38.5, 41] })
  expect(read(time.replace('unit: s', 'unit: min'), () => CSV)).toEqual({ kind: 'replay', values: [2310, 2460] })
})

test('a file is asked for by name only, and only where files can be opened', () => {
  const time = '{ kind: empirical, file: study.csv, column: seconds, unit: s }'
  const asked: string[] = []
  read(time, (name) => {
    asked.push(name)
    return CSV
  })
  expect(new Set(asked)).toEqual(new Set(['study.csv']))
  expect(read(time)).toEqual(['E_NO_FILES'])
  expect(read(time, () => null)).toEqual(['E_FILE'])
  expect(read(time, () => '')).toEqual(['E_COLUMN'])
  expect(read(time, () => 'seconds\n')).toEqual(['E_LIST_EMPTY'])
  expect(read(time, () => 'seconds\n-4\n')).toEqual(['E_CELL'])
})

const STUDY = 'Station,Operator,time\nImpeller,Ann,40\nImpeller,Bob,42\nHousing,Ann,60\nHousing,Bob,\nHousing,Ann,63\n'

function table(where: string) {
  const time = `{ kind: empirical, file: study.csv, column: time, unit: s${where} }`
  const { scenario, problems, notes } = readScenario(scenarioText(['40 s ± 10 %', time]), { files: () => STUDY })
  const fit = scenario?.line.stations[1]?.work?.[0]?.seconds[0]
  return { values: fit?.kind === 'empirical' ? fit.values : null, codes: problems.map(({ code }) => code), note: notes?.tables[0] }
}

test('"where" takes the rows of one station; rows left out, empty and pooled are counted', () => {
  expect(table(', where: { Station: Impeller }')).toEqual({
    values: [40, 42],
    codes: [],
    note: { path: 'stations.Fit.work.fit', file: 'study.csv', column: 'time', rows: 5, taken: 2, others: 3, empty: 0, pooled: [] },
  })
  expect(table(', where: { Station: Housing, Operator: Ann }')).toMatchObject({
    values: [60, 63],
    codes: [],
    note: { taken: 2, others: 3 },
  })
  expect(table(', where: { Station: Housing }')).toMatchObject({
    values: [60, 63],
    codes: ['W_CELLS_EMPTY'],
    note: { others: 2, empty: 1 },
  })
})

test('rows of several stations taken together are told; those of several operators are not', () => {
  expect(table('')).toMatchObject({
    values: [40, 42, 60, 63],
    codes: ['W_CELLS_EMPTY', 'W_ROWS_POOLED'],
    note: { empty: 1, pooled: ['Station'] },
  })
  expect(table(', where: { Station: Fan }')).toMatchObject({ codes: ['E_WHERE'] })
  expect(table(', where: { Place: Fan }')).toMatchObject({ codes: ['E_COLUMN'] })
})
