import { Ajv } from 'ajv'
import { describe, expect, test } from 'vitest'
import { main } from './main.ts'
import { EXACT_LINE, memoryShell, SMALL_LINE } from './memoryShell.ts'

const files = { 'small.yaml': SMALL_LINE, 'exact.yaml': EXACT_LINE, 'wrong.yaml': SMALL_LINE.replace('zone: Z05', 'zone: Z55') }

async function typed(...words: string[]) {
  const shell = memoryShell(files)
  const code = await main(words, shell)
  return { code, out: shell.said.out, err: shell.said.err, files: shell.files }
}

describe('help', () => {
  test('of the command and of each part, with examples, in 80 columns', async () => {
    for (const words of [
      ['--help'],
      ['check', '--help'],
      ['run', '--help'],
      ['trace', '--help'],
      ['sweep', '--help'],
      ['carriers', '--help'],
      ['store', '--help'],
      ['store', 'info', '--help'],
      ['store', 'prune', '--help'],
      ['notebook', '--help'],
      ['schema', '--help'],
      ['resolve', '--help'],
    ]) {
      const { code, out, err } = await typed(...words)
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
  ])('%j', async (words, said) => {
    const { code, out, err } = await typed(...words)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err.replaceAll(/\s+/g, ' ')).toContain(said)
    expect(err).not.toMatch(/\n\s+at /)
    for (const line of err.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })
})

test('a page that may not be written is found before anything is run: code 1', async () => {
  const { code, err } = await typed('sweep', 'small.yaml', '--out', 'closed/page.html')
  expect(code).toBe(1)
  expect(err).toBe('"closed/page.html" cannot be written: you may not write or read there\n')
})

describe('check', () => {
  test('says what was understood, in 80 columns', async () => {
    const { code, out } = await typed('check', 'small.yaml')
    expect(code).toBe(0)
    for (const said of ['10 zones', 'Takt 94.3 s', '> B Fit', 'an estimate', 'jam']) expect(out).toContain(said)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })
})

describe('run', () => {
  test('once, and its tables', async () => {
    const { code, out, files: written } = await typed('run', 'small.yaml', '--csv', 'tables', '--trace')
    expect(code).toBe(0)
    expect(out).toMatch(/^In this run 4 carriers made \d+ units in the second shift/)
    expect([...written.keys()].filter((name) => name.startsWith('tables/')).sort()).toEqual(
      ['carriers', 'events', 'hours', 'outputs', 'stations', 'stops', 'zones'].map((name) => `tables/${name}.csv`),
    )
  })

  test('several times: the mean, and how sure', async () => {
    const { out } = await typed('run', 'small.yaml', '--replications', '12', '--workers', '1')
    expect(out).toMatch(/^With 4 carriers the loop makes \d+ units a shift on average/)
    expect(out).toContain('More replications narrow')
    expect(out).toContain('B Fit')
  })
})

describe('carriers', () => {
  test('the answer first, then the table with the chosen row, then how sure; what is being decided on standard error', async () => {
    const words = ['carriers', 'small.yaml', '--workers', '1', '--replications', '40']
    const { code, out, err } = await typed(...words)
    expect(code).toBe(0)
    const [answer, chosen, sure] = ['With ', '\n> ', 'replications of each count in question'].map((said) =>
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
  const words = ['sweep', 'exact.yaml', '--carriers', '3..4', '--replications', '2', '--workers', '1', '--json']
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
    const [answer, chosen, sure] = ['With ', '\n> ', 'More replications'].map((said) => out.indexOf(said))
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
    const valid = new Ajv({ allErrors: true, strict: true, allowUnionTypes: true }).compile(
      JSON.parse((await typed('schema', '--of', 'trace')).out) as object,
    )
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
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/^From 120 to 132 min .* Page: trace.html $/)
    expect(pages.get('trace.html')).toContain('Zone, in travel order')
  })
})
