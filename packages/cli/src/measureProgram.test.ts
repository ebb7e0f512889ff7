import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { ORDERS, STOPS, TIMES } from '../../../tests/helpers/shopTables.ts'
import { workbookBytes } from '../../../tests/helpers/workbook.ts'
import { main } from './main.ts'
import { schemaCheck } from '../../../tests/helpers/schemaCheck.ts'

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

describe('stoplog and mix', () => {
  test('a log told, written, as a document', async () => {
    const shell = memoryShell({ 'stops.csv': STOPS })
    expect(
      await main(
        [
          'stoplog',
          'stops.csv',
          '--from',
          '2026-11-02 06:00',
          '--to',
          '2026-11-03 14:00',
          '--hours',
          '06:00-14:00',
          '--write',
          'stops.yaml',
        ],
        shell,
      ),
    ).toBe(0)
    // 16 h less 32 min, over three stops
    expect(shell.files.get('stops.yaml')).toContain('"S3 tool": { at: "S3", after: exponential 18560 s,')
    const json = memoryShell({ 'stops.csv': STOPS })
    expect(await main(['stoplog', 'stops.csv', '--json'], json)).toBe(0)
    expect(JSON.parse(json.said.out)).toMatchObject({ document: 'stoplog', endsGuessed: true, files: [{ rows: 5, read: 5 }] })
  })
  test('what is asked wrongly', async () => {
    const typed = async (...words: string[]) => {
      const shell = memoryShell({ 'stops.csv': STOPS, 'orders.csv': ORDERS })
      expect(await main(words, shell)).toBe(2)
      return shell.said.err.replaceAll(/\s+/g, ' ')
    }
    expect(await typed('stoplog', 'stops.csv', '--hours', 'always')).toContain('are no working hours')
    expect(await typed('stoplog', 'stops.csv', '--from', 'Monday')).toContain('is no day')
    expect(await typed('stoplog', 'stops.csv', '--from', '2027-01-01', '--to', '2027-01-02')).toContain('no stop of the log lies between')
    expect(await typed('mix', 'orders.csv', '--work', 'small=50')).toContain('the work of "large" is missing')
    expect(await typed('mix', 'orders.csv', '--work', 'small=50, larch=64')).toContain('no order is of "larch"')
  })
  test('orders told, written, as a document', async () => {
    const shell = memoryShell({ 'orders.csv': ORDERS })
    expect(await main(['mix', 'orders.csv', '--write', 'products.yaml'], shell)).toBe(0)
    expect(shell.files.get('products.yaml')).toContain('variants: { "small": 21, "large": 5 } # ordered, orders.csv: 26 units')
    const json = memoryShell({ 'orders.csv': ORDERS })
    expect(await main(['mix', 'orders.csv', '--json'], json)).toBe(0)
    expect(JSON.parse(json.said.out)).toMatchObject({ document: 'mix', units: 26 })
  })
  test.each(['times', 'stoplog', 'mix'])('the document of %s is what its schema says', async (of) => {
    const schema = memoryShell()
    await main(['schema', '--of', of], schema)
    const valid = schemaCheck(JSON.parse(schema.said.out))
    const shell = memoryShell({ 'times.csv': TIMES, 'stoplog.csv': STOPS, 'mix.csv': ORDERS })
    await main([of, `${of}.csv`, '--json'], shell)
    const told = JSON.parse(shell.said.out)
    expect(valid(told), JSON.stringify(valid.errors?.slice(0, 4))).toBe(true)
    expect(valid({ ...told, surprise: 1 })).toBe(false)
  })
})

describe('a folder of data', () => {
  const line = readFileSync(new URL('../../../scenarios/ten-zone-learning-loop.yaml', import.meta.url), 'utf8')
  const times = (seconds: number) =>
    `task,seconds\n${Array.from({ length: 24 }, (_, index) => `fit,${seconds + ((index * 7) % 11)}`).join('\n')}\n`
  const files = { 'line.yaml': line, 'data/times.csv': times(30), 'data/notes.csv': 'x\n1\n' }
  const few = ['--replications', '3']

  test('becomes a complete scenario, and a change of the data says what changed', async () => {
    const shell = memoryShell(files)
    expect(await main(['assemble', 'line.yaml', '--data', 'data', '--write', 'complete.yaml', ...few], shell)).toBe(0)
    const written = shell.files.get('complete.yaml')!
    expect(written).toContain('# measured, times.csv: 24 times')
    expect(shell.said.out).toContain('"notes.csv" is not used')
    expect(shell.said.out).toContain('1 value of line.yaml comes from 1 table (24 rows read)')
    const again = memoryShell({ ...files, 'complete.yaml': written })
    expect(await main(['assemble', 'line.yaml', '--data', 'data', '--write', 'complete.yaml', ...few], again)).toBe(0)
    expect(again.said.out).toContain('Nothing has changed since it was written last.')
    const slower = memoryShell({ ...files, 'complete.yaml': written, 'data/times.csv': times(40) })
    expect(await main(['assemble', 'line.yaml', '--data', 'data', '--write', 'complete.yaml', ...few], slower)).toBe(0)
    expect(slower.said.out).toContain('Since it was written last 1 value has changed.')
    expect(slower.said.out).toMatch(/now makes [\d.]+( ± [\d.]+)? (units )?(less|fewer)|fewer|less/)
  })
  test('a forecast with the doubt of its inputs beside the one without', { tags: 'long' }, async () => {
    const shell = memoryShell(files)
    expect(
      await main(['forecast', 'line.yaml', '--data', 'data', '--draws', '6', '--replications', '12', '--json', '--fresh'], shell),
    ).toBe(0)
    const { inputDoubt } = JSON.parse(shell.said.out)
    expect(inputDoubt.files).toMatchObject([{ rows: 24, read: 24, refused: [] }])
    expect([
      inputDoubt.draws,
      inputDoubt.without.length,
      inputDoubt.inputs.map(({ name, n }: { name: string; n: number }) => [name, n]),
    ]).toEqual([6, 12, [['fit', 24]]])
    expect(inputDoubt.inputVariance).toBeGreaterThan(0)
    const told = memoryShell(files)
    expect(await main(['forecast', 'line.yaml', '--data', 'data', '--draws', '6', '--replications', '12', '--fresh'], told)).toBe(0)
    expect(told.said.out.replaceAll(/\s+/g, ' ')).toMatch(/What would narrow it most: 20 more cycles at fit: ± [\d.]+ becomes ± [\d.]+\./)
    expect(told.said.out.replaceAll(/\s+/g, ' ')).toContain('24 rows below 1 row of heads: 24 read + 0 refused.')
    expect(told.said.out).toContain('"notes.csv" is not used')
  })
  test('what does not fit is told, and nothing is written', async () => {
    const typed = async (more: Record<string, string>, ...words: string[]) => {
      const shell = memoryShell({ ...files, ...more })
      expect(await main(['assemble', 'line.yaml', '--data', 'data', '--write', 'complete.yaml', ...words], shell)).toBe(2)
      expect(shell.files.has('complete.yaml')).toBe(false)
      return shell.said.err.replaceAll(/\s+/g, ' ')
    }
    expect(await typed({ 'data/stops.csv': 'place,start,end\nOven,2026-11-03 06:10,2026-11-03 06:20\n' })).toContain(
      'stops at "Oven": the skeleton has no such place',
    )
    expect(await typed({ 'data/times.csv': 'task,seconds\nfti,30\n' })).toContain('did you mean "fit"?')
    expect(await typed({}, '--data', 'nowhere')).toContain('there is no folder "nowhere" here')
    expect(await typed({}, '--allowance', '10')).toContain('say where breaks are counted')
  })
  test('the document is what its schema says', async () => {
    const schema = memoryShell()
    await main(['schema', '--of', 'assemble'], schema)
    const valid = schemaCheck(JSON.parse(schema.said.out))
    const shell = memoryShell(files)
    await main(['assemble', 'line.yaml', '--data', 'data', '--json', ...few], shell)
    expect(valid(JSON.parse(shell.said.out)), JSON.stringify(valid.errors?.slice(0, 4))).toBe(true)
  })
})
