import { describe, expect, test } from 'vitest'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { workbookBytes } from '../../../tests/helpers/workbook.ts'
import { main } from './main.ts'

const CSV = `task,variant,seconds\n${Array.from({ length: 8 }, (_, index) => `wire,small,${40 + ((index * 7) % 5)}`).join('\n')}\n`

describe('times', () => {
  test('told, written, as a document, as tables', async () => {
    const shell = memoryShell({ 'times.csv': CSV })
    expect(await main(['times', 'times.csv', '--write', 'tasks.yaml', '--csv', 'tables'], shell)).toBe(0)
    expect(shell.said.out).toContain('8 rows below 1 row of heads: 8 read + 0 refused.')
    expect(shell.files.get('tasks.yaml')).toBe(
      '# Measured times, by: loopwright times times.csv --write tasks.yaml --csv tables\n# To be put under load, unload or work of the stations.\nwire: { byVariant: { small: 42 s ± 3.81802 % } } # measured, times.csv: small: 8 times, too few for a shape: lognormal by their mean and spread\n',
    )
    expect(shell.files.get('tables/times-tasks.csv')).toContain('wire,small,8,42')
    const json = memoryShell({ 'times.csv': CSV })
    expect(await main(['times', 'times.csv', '--json'], json)).toBe(0)
    expect(JSON.parse(json.said.out)).toMatchObject({ document: 'times', files: [{ rows: 8, read: 8 }], tasks: [{ n: 8, mean: 42 }] })
  })
  test('a workbook', async () => {
    const bytes = workbookBytes({
      rows: [
        ['Task', 'Seconds'],
        ['wire', 45],
        ['wire', 47],
      ],
    })
    const shell = memoryShell({}, { bytes: { 'w.xlsx': bytes } })
    expect(await main(['times', 'w.xlsx'], shell)).toBe(0)
    expect(shell.said.out).toContain('Sheet "Times".')
  })
  test('an allowance asks where the breaks are', async () => {
    const shell = memoryShell({ 'times.csv': CSV })
    expect(await main(['times', 'times.csv', '--allowance', '12'], shell)).toBe(2)
    expect(shell.said.err).toContain('say where breaks are counted, so that they are not counted twice')
    expect(await main(['times', 'times.csv', '--breaks', 'calendar'], memoryShell({ 'times.csv': CSV }))).toBe(2)
    const told = memoryShell({ 'times.csv': CSV })
    expect(await main(['times', 'times.csv', '--allowance', '10 %', '--breaks', 'calendar', '--json'], told)).toBe(0)
    expect(JSON.parse(told.said.out).tasks[0].mean).toBeCloseTo(46.2, 9)
  })
  test('all files that cannot be read are told at once', async () => {
    const shell = memoryShell({ 'a.csv': 'x,y\n1,2\n', 'b.csv': 'task,seconds\n"wire,4\n' })
    expect(await main(['times', 'a.csv', 'b.csv'], shell)).toBe(2)
    expect(shell.said.err.replaceAll(/\s+/g, ' ')).toMatch(
      /"a\.csv", line 1: no row names the columns.*"b\.csv", line 2: a quote opens here and never closes/,
    )
  })
})
