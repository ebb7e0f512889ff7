import { describe, expect, test } from 'vitest'
import { EXAMPLES } from './options/examples.ts'
import { main } from './main.ts'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { EXACT_LINE, SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { schemaCheck } from '../../../tests/helpers/schemaCheck.ts'

const files = { 'small.yaml': SMALL_LINE, 'exact.yaml': EXACT_LINE, 'wrong.yaml': SMALL_LINE.replace('zone: Z05', 'zone: Z55') }

async function typed(...words: string[]) {
  const shell = memoryShell(files)
  const code = await main(words, shell)
  return { code, out: shell.said.out, err: shell.said.err, files: shell.files }
}

describe('help', () => {
  test('of the command and of each part, with examples, in 80 columns', async () => {
    for (const name of Object.keys(EXAMPLES)) {
      const { code, out, err } = await typed(...name.split(' ').filter((word) => word !== ''), '--help')
      expect(code).toBe(0)
      expect(err).toBe('')
      expect(out).toContain('Examples:')
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
    }
  })
})

describe('wrong use: code 2, a sentence, no stack, nothing on standard output', () => {
  test.each([
    [['sweeep', 'small.yaml'], 'Did you mean sweep?'],
    [['carriers', 'small.yaml', '--level', '0.95'], '--level "0.95": Confidence is in percent: write 95.'],
    [['carriers', 'small.yaml', '--out', 'page.pdf'], '--out "page.pdf": The page is an HTML file: write page.html'],
    [['carriers', 'small.yaml', '--out', ''], 'The name is empty'],
    [['carriers', 'small.yaml', '--replications', '9'], 'it is called --at-most now'],
    [['steady', 'small.yaml', '--replications=9'], 'it is called --runs now'],
    [['order', 'small.yaml', '--mine', 'B@Z06'], 'it is called --try now'],
    [['order', 'small.yaml', '--keep', 'B'], 'it is called --stay now'],
    [['order', 'small.yaml', '--delta', '2'], 'it is called --least-gain now'],
    [['order', 'small.yaml', '--replications', '2'], 'it is called --check-replications now'],
    [['run', 'small.yaml', '--open'], 'say where it goes'],
    [['trace', 'small.yaml', '--out', 'events.txt', '--open'], 'and "events.txt" is none'],
    [['run', 'small.yaml', '--csv', ''], 'The name is empty'],
    [['run', 'small.yaml', '--csv', 'a', '--csv-style', 'tab'], 'Allowed choices are comma, semicolon'],
    [['run'], "missing required argument 'file'"],
    [['run', 'small.yaml', '--jsn'], 'Did you mean --json?'],
    [['run', 'small.yaml', '--replications', 'ten'], 'whole number'],
    [['run', 'small.yaml', '--trace'], '--json or --csv'],
    [['run', 'small.yaml', '--trace', '--json', '--replications', '2'], 'the events of one run'],
    [['run', 'small.yaml', '--seed', 'a/b'], 'no "/"'],
    [['trace', 'small.yaml', '--station', 'D'], 'there is no station "D"'],
    [['trace', 'small.yaml', '--from', '1,5 h'], '--from "1,5 h": write a time with its unit'],
    [['trace', 'small.yaml', '--carrier', '9'], 'numbered 0 to 3'],
    [['run', 'nowhere.yaml'], 'there is no file "nowhere.yaml"'],
    [['sweep', 'small.yaml', '--carriers', '9..3'], 'did you mean 3..9?'],
    [['sweep', 'small.yaml', '--carriers', '3..12'], 'takes 1 to 9 carriers, not 12'],
    [['check', 'wrong.yaml'], 'Z55'],
    [['schema', '--of', 'nothing'], 'Allowed choices are scenario, run, sweep, carriers'],
    [['notebook', 'nowhere.ts'], 'there is no file "nowhere.ts"'],
    [['notebook', 'nowhere.yaml'], 'there is no file "nowhere.yaml"'],
    [
      ['notebook', 'small.yaml'],
      '"small.yaml" is a scenario; a notebook is a TypeScript module. Did you mean loopwright carriers small.yaml?',
    ],
  ])('%j', async (words, said) => {
    const { code, out, err } = await typed(...words)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err.replaceAll(/\s+/g, ' ')).toContain(said)
    expect(err).not.toMatch(/\n\s+at /)
    for (const line of err.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })
})

test('--version names the command and the engine', async () => {
  const { code, out, err } = await typed('--version')
  expect({ code, err }).toEqual({ code: 0, err: '' })
  expect(out).toMatch(/^loopwright \d+\.\d+\.\d+, engine \d+\.\d+\.\d+\n$/)
})

test('text follows the width of the terminal, from 60 to 120 columns', async () => {
  for (const columns of [60, 80, 120]) {
    const shell = memoryShell(files, { columns })
    for (const words of [['check', 'small.yaml'], ['--help'], ['order', '--help'], ['run', 'small.yaml', '--jsn']]) await main(words, shell)
    await main(['sweep', 'small.yaml', '--carriers', '3..4', '--replications', '4', '--workers', '1'], shell)
    // examples stay as they have to be typed
    const lines = `${shell.said.out}${shell.said.err}`.split('\n').filter((line) => !line.startsWith('  loopwright '))
    const widths = lines.map((line) => [...line].length)
    expect(Math.max(...widths)).toBeLessThanOrEqual(columns)
    expect(Math.max(...widths)).toBeGreaterThan(columns - 8)
  }
})

test('a page that may not be written is found before anything is run: code 1', async () => {
  const { code, err } = await typed('sweep', 'small.yaml', '--out', 'closed/page.html')
  expect(code).toBe(1)
  expect(err).toBe('"closed/page.html" cannot be written: you may not write or read there\n')
})

test('stopped while the page is made: no page, code 130', { tags: 'long' }, async () => {
  const stop = new AbortController()
  const shell = { ...memoryShell(files), signal: stop.signal }
  const checked = shell.checkWritable
  const working = main(['check', 'small.yaml', '--out', 'page.html'], {
    ...shell,
    checkWritable: async (path) => {
      await checked(path)
      stop.abort()
    },
  })
  expect(await working).toBe(130)
  expect(shell.files.has('page.html')).toBe(false)
  expect(shell.said.err).toContain('no page was written')
})

test('want of memory in a thread is told without a stack: code 1', async () => {
  const want = Object.assign(new Error('a thread ran out of memory'), { name: 'OutOfMemory' })
  const shell = { ...memoryShell(files), readFile: () => Promise.reject(want) }
  expect(await main(['check', 'small.yaml'], shell)).toBe(1)
  expect(shell.said.err).toBe('a thread ran out of memory\n')
})

test('tables that may not be written are found before anything is run: code 1', async () => {
  const { code, err } = await typed('sweep', 'small.yaml', '--csv', 'closed/tables')
  expect(code).toBe(1)
  expect(err).toBe('"closed/tables/columns.csv" cannot be written: you may not write or read there\n')
})

describe('check', () => {
  test('says what was understood, in 80 columns', async () => {
    const { code, out } = await typed('check', 'small.yaml')
    expect(code).toBe(0)
    for (const said of ['10 zones', 'leaves 94.3 s', '> B Fit', 'an estimate', 'jam']) expect(out).toContain(said)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })
})

describe('run', () => {
  test('once, and its tables', async () => {
    const { code, out, files: written } = await typed('run', 'small.yaml', '--csv', 'tables', '--trace')
    expect(code).toBe(0)
    expect(out).toMatch(/^The plan of 70 was met\.\nIn this run 4 carriers made \d+ units in the second shift/)
    const names = [...written.keys()]
      .filter((name) => name.startsWith('tables/'))
      .map((name) => name.slice('tables/'.length, -'.csv'.length))
    expect(names).toEqual(
      expect.arrayContaining(['outputs', 'station_seconds', 'zone_seconds', 'carrier_seconds', 'stop_seconds', 'events']),
    )
    const columns = written.get('tables/columns.csv')!
    for (const name of names.filter((each) => each !== 'columns')) expect(columns, name).toContain(`\n${name},`)
  })

  test('several times: the mean, and how sure', async () => {
    const { out } = await typed('run', 'small.yaml', '--replications', '12', '--workers', '1')
    expect(out).toMatch(/^The plan of 70 is met in all 12 shifts simulated/)
    expect(out).toMatch(/With 4 carriers the loop makes \d+ units a shift on average/)
    expect(out).toMatch(/More\s+simulated\s+shifts\s+narrow\s+this/)
    expect(out).toContain('B Fit')
  })
})

describe('carriers', () => {
  test('the answer first, then the table with the chosen row, then how sure; what is being decided on standard error', async () => {
    const words = ['carriers', 'small.yaml', '--workers', '1', '--at-most', '40']
    const { code, out, err } = await typed(...words)
    expect(code).toBe(0)
    const [answer, chosen, sure] = ['2 carriers meet the plan of 70', '\n> ', 'Average output per shift'].map((said) =>
      out.replaceAll(/ *\n(?! *[>\d])/g, ' ').indexOf(said),
    )
    expect(answer).toBe(0)
    expect(chosen).toBeGreaterThan(answer!)
    expect(sure).toBeGreaterThan(chosen!)
    expect(err).toMatch(/^1 to 9 carriers: which is best\ndone: \d+ replications in /)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  test('percent out of range is refused', async () => {
    const { code, err } = await typed('carriers', 'small.yaml', '--within', '0')
    expect(code).toBe(2)
    expect(err.replaceAll(/\s+/g, ' ')).toContain('above 0 and below 100')
  })
})

test('the store is kept from one command to the next, but not with --fresh', async () => {
  const shell = memoryShell(files)
  const words = ['sweep', 'small.yaml', '--carriers', '3..4', '--replications', '2', '--workers', '1', '--json']
  await main(words, shell)
  const first = shell.said.out
  await main(words, shell)
  expect(shell.said.out).toBe(first + first)
  expect(shell.said.err).toContain('(8 of them from the store)')
  const { err } = shell.said
  await main([...words, '--fresh'], shell)
  expect(shell.said.err.slice(err.length)).not.toContain('from the store')
})

describe('sweep', () => {
  test('the answer first, then the table with the chosen row, then how sure', async () => {
    const { code, out, err } = await typed('sweep', 'small.yaml', '--carriers', '2..6', '--replications', '5', '--workers', '1')
    expect(code).toBe(0)
    const [answer, chosen, sure] = ['No count is shown yet to meet the plan of 70', '\n> ', 'Average output per shift'].map((said) =>
      out.indexOf(said),
    )
    expect(answer).toBe(0)
    expect(chosen).toBeGreaterThan(answer!)
    expect(sure).toBeGreaterThan(chosen!)
    expect(err).toMatch(/^carriers 2 to 6, 5 replications each, seed 1\ndone: 50 replications in /)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  test('by itself tries what the law suggests', async () => {
    const { out } = await typed('sweep', 'exact.yaml', '--replications', '2', '--workers', '1', '--json')
    expect(JSON.parse(out).counts.map((count: { carriers: number }) => count.carriers)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9])
  })
})

describe('trace', () => {
  test('every event as a line; narrowed by carrier, place and time', async () => {
    const all = (await typed('trace', 'small.yaml')).out.split('\n')
    expect(all[0]).toBe('        Time  Carrier  Event')
    expect(all.length).toBeGreaterThan(1000)
    for (const line of all) expect(line.length).toBeLessThanOrEqual(80)
    const narrow = ['trace', 'small.yaml', '--station', 'B', '--from', '1 h', '--to', '1.2 h'] as const
    const some = (await typed(...narrow)).out.trim().split('\n').slice(1)
    expect(some.length).toBeGreaterThan(5)
    expect(some.every((line) => line.trim() >= '1:00:00.000' && line.trim() < '1:12:00.001' && /B|Z05|jam|stands still/.test(line))).toBe(
      true,
    )
  })

  test('as NDJSON each line is what the schema says; into a file, too', async () => {
    const { code, out } = await typed('trace', 'small.yaml', '--json', '--replication', '3')
    expect(code).toBe(0)
    const lines = out.trim().split('\n')
    const valid = schemaCheck(JSON.parse((await typed('schema', '--of', 'trace')).out) as object)
    for (const line of lines) expect(valid(JSON.parse(line)), line).toBe(true)
    expect(valid({ ...(JSON.parse(lines[1]!) as object), surprise: 1 })).toBe(false)
    expect(JSON.parse(lines[0]!)).toMatchObject({ document: 'trace', replication: 3 })
    const written = await typed('trace', 'small.yaml', '--json', '--replication', '3', '--out', 'events.ndjson')
    expect(written.files.get('events.ndjson')).toBe(out)
    expect(written.out).toBe(`${lines.length - 1} events: events.ndjson\n`)
  })

  test('a stretch as a picture', async () => {
    const { code, out, files: pages } = await typed('trace', 'small.yaml', '--from', '2 h', '--to', '2.2 h', '--out', 'trace.html')
    expect(code).toBe(0)
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/^From 08:00 to 08:12 .* Page: trace.html $/)
    expect(pages.get('trace.html')).toContain('Level: it stands; sloped: it moves.')
    const short = await typed('trace', 'small.yaml', '--from', '2 h', '--to', '2.2 h', '--out', 'trace.htm')
    expect(short.files.get('trace.htm')).toContain('Level: it stands; sloped: it moves.')
    expect(pages.get('trace.html')).toContain('<h1>What happened on the loop from 08:00 to 08:12?</h1>')
  })
})
