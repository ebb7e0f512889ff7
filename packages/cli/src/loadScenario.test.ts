import { expect, test } from 'vitest'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { main } from './main.ts'

const TIMES = 'seconds\n15\n6\n7\n'
const LINE = SMALL_LINE.replace('place: 20 s', 'place: { kind: empirical, file: times.csv, column: seconds, unit: s }')

test.each([
  ['check', 'line.yaml'],
  ['resolve', 'line.yaml'],
  ['run', 'line.yaml'],
  ['run', 'line.yaml', '--replications', '3'],
  ['sweep', 'line.yaml', '--carriers', '3..4', '--replications', '5'],
  ['losses', 'line.yaml', '--replications', '5'],
  ['order', 'line.yaml', '--move', 'B', '--zones', 'Z04,Z05', '--check-replications', '5'],
  ['steady', 'line.yaml', '--runs', '2'],
])('%s reads the file once, and its tables once, whatever it tells of them', async (...words) => {
  expect(LINE).toContain('times.csv')
  const opened: string[] = []
  const small = memoryShell({ 'line.yaml': LINE, 'times.csv': TIMES })
  const shell = {
    ...small,
    readFile: (path: string) => {
      opened.push(path)
      return small.readFile(path)
    },
    readBeside: (file: string, path: string) => {
      opened.push(path)
      return small.readBeside(file, path)
    },
  }
  expect(await main(words, shell)).toBe(0)
  expect(opened).toEqual(['line.yaml', 'times.csv'])
})
