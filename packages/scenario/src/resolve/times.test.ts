import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/golden/scenario/scenarioText.ts'
import { readScenario } from '../read.ts'

const CSV = 'task;seconds\nfit;38,5\nfit;41\nfit;\n'

function read(time: string, files?: (name: string) => string | null) {
  const { scenario, problems } = readScenario(scenarioText(['40 s ± 10 %', time]), 'x', files === undefined ? {} : { files })
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
