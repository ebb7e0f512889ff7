/** The page of threats: each claim names a test that is there, or says that nothing holds. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { READERS } from './fuzz/readers.ts'
import { TOP } from './tidy/sources.ts'

const page = readFileSync(join(TOP, 'packages/cli/THREATS.md'), 'utf8')
const rows = page
  .split('\n')
  .filter((line) => line.startsWith('| ') && !/^\| (?:could try|---)/.test(line))
  .map((line) => line.split(' | ').map((cell) => cell.replaceAll(/^\| | \|$/g, '')))

test('each row says what could be tried, what holds, and by which test that is known', () => {
  expect(rows.length).toBeGreaterThan(30)
  const lost = rows.flatMap(([what, holds, by]) => {
    if (by === '–') return /\*\*nothing\*\*|nothing, on purpose/.test(holds!) ? [] : [`${what}: no test, and no word that nothing holds`]
    const [, file, name] = /^`([\w./-]+)`: (.+)$/.exec(by!) ?? []
    if (file === undefined) return [`${what}: ${by}`]
    return readFileSync(join(TOP, file), 'utf8').includes(name!) ? [] : [`${file} has no test "${name}"`]
  })
  expect(lost).toEqual([])
})

test('every reader of the spoilt texts stands under something that is sent', () => {
  const told = [
    'scenario',
    'decision',
    'table',
    'orders',
    'stop log',
    'workbook',
    'store',
    'page',
    'server',
    'queue',
    'command line',
    'weeks',
    'stations',
    'tasks',
  ]
  expect(Object.keys(READERS).filter((reader) => !told.some((word) => reader.includes(word)))).toEqual([])
  const heads = [...page.matchAll(/^## (.+)$/gm)].map(([, head]) => head!)
  expect(heads).toEqual(expect.arrayContaining(['A scenario', 'A decision file', 'A notebook', 'A page', 'A queue']))
})
