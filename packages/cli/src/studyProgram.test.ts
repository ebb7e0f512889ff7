import { Ajv } from 'ajv'
import { expect, test } from 'vitest'
import { main } from './main.ts'
import { memoryShell, SMALL_LINE } from './memoryShell.ts'

const VARIED = `${SMALL_LINE}variations:\n  more: { carriers.count: 5 }\n  slow: { stations.B.work.fit: 90 s ± 15 % }\n`
const files = {
  'a.yaml': SMALL_LINE,
  'b.yaml': SMALL_LINE.replace('fit: 70 s', 'fit: 80 s').replace('name: Small loop', 'name: Slow loop'),
  'v.yaml': VARIED,
  'tasks.csv': 'task,seconds,after\nbolt,6,\nwire,2.5,bolt\ntest,5,bolt\n',
}
const FEW = ['--replications', '4', '--workers', '1']

async function typed(...words: string[]): Promise<{ code: number; out: string; err: string; files: Map<string, string> }> {
  const shell = memoryShell(files)
  const code = await main(words, shell)
  return { code, ...shell.said, files: shell.files }
}

test('compare two files: answer, table, changed inputs, how sure, and the page', async () => {
  const { code, out, files: written } = await typed('compare', 'a.yaml', 'b.yaml', ...FEW, '--out', 'out/page.html')
  expect(code).toBe(0)
  expect(out).toMatch(/^Slow loop makes [\d.]+ less per shift than Small loop in the same worlds/)
  expect(out).toContain('stations.B.work.fit')
  expect(out).toContain('Each of 4 random worlds met every line')
  expect(out).toContain('The question is a shift that starts from the state the one before left')
  expect(out.split('\n').every((line) => [...line].length <= 80)).toBe(true)
  expect(written.get('out/page.html')).toContain('Slow loop')
})

test('compare variations of one file, all or named', async () => {
  const all = JSON.parse((await typed('compare', 'v.yaml', '--variations', ...FEW, '--json')).out) as {
    lines: { name: string; changed: unknown[] }[]
  }
  expect(all.lines.map(({ name }) => name)).toEqual(['Small loop', 'more', 'slow'])
  expect(all.lines[1]!.changed).toEqual([{ path: 'carriers.count', places: [], before: '4', after: '5' }])
  const one = await typed('compare', 'v.yaml', '--variations', 'more', ...FEW)
  expect(one.out).not.toContain('slow')
})

test('compare says what it cannot take', async () => {
  expect(await typed('compare', 'a.yaml', ...FEW)).toMatchObject({ code: 2, err: expect.stringContaining('two or more scenario files') })
  expect(await typed('compare', 'a.yaml', '--variations', ...FEW)).toMatchObject({
    code: 2,
    err: expect.stringContaining('has no variations'),
  })
  expect(await typed('compare', 'a.yaml', 'b.yaml', '--replications', '1')).toMatchObject({
    code: 2,
    err: expect.stringContaining('at least 2'),
  })
})

const documents = [
  ['compare', ['compare', 'v.yaml', '--variations', 'more']],
  ['drivers', ['drivers', 'a.yaml']],
  ['losses', ['losses', 'a.yaml']],
  ['steady', ['steady', 'a.yaml']],
  ['order', ['order', 'a.yaml', '--zones', 'Z04..Z06', '--delta', '5', '--mine', 'B@Z03']],
] as const

test.each(documents)('%s --json is what its schema says, and the page is written', async (name, words) => {
  const { code, out, files: written } = await typed(...words, ...FEW, '--json', '--out', 'page.html')
  expect(code).toBe(0)
  const schema = JSON.parse((await typed('schema', '--of', name)).out) as object
  const valid = new Ajv({ allErrors: true, strict: true, strictTypes: false, allowUnionTypes: true }).compile(schema)
  const document = JSON.parse(out) as Record<string, unknown>
  expect(valid(document), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
  expect(valid({ ...document, surprise: 1 })).toBe(false)
  expect(written.get('page.html')).toContain('Screening only')
})

test('drivers: what limits, one carrier more or less, the law beside it', async () => {
  const { code, out } = await typed('drivers', 'a.yaml', ...FEW)
  expect(code).toBe(0)
  expect(out).toMatch(/^What limits this line is B Fit: 1 % less time there\s+gives 0\.\d+ % more\s+output\.\nOne carrier more than 4/)
  expect(out).toContain('station-limited with 4 carriers; the slowest exchange is')
  expect(out.split('\n').every((line) => [...line].length <= 80)).toBe(true)
})

test('losses: forecast, ideal, a row for each cause', async () => {
  const { code, out } = await typed('losses', 'a.yaml', ...FEW)
  expect(code).toBe(0)
  for (const name of ['nothing: the forecast', 'jam', 'breaks', 'exchange at B', 'interaction', 'all of them: the ideal'])
    expect(out).toContain(name)
  expect(out.split('\n').every((line) => [...line].length <= 80)).toBe(true)
})

test('losses: the page draws them from the ideal down to the forecast', async () => {
  const { code, files: written } = await typed('losses', 'a.yaml', ...FEW, '--out', 'page.html')
  expect(code).toBe(0)
  expect(written.get('page.html')).toContain('from the ideal down to the forecast by')
})

test('order: the choice, today, the one given by hand, and what it promises', async () => {
  const { code, out } = await typed('order', 'a.yaml', '--zones', 'Z04..Z06', '--mine', 'B@Z03', ...FEW)
  expect(code).toBe(0)
  expect(out).toContain('(given)')
  expect(out).toContain('would be')
  expect(out).toContain('fresh random worlds')
  expect(await typed('order', 'a.yaml', '--move', 'X', ...FEW)).toMatchObject({
    code: 2,
    err: expect.stringContaining('there are A, B, C'),
  })
})

test('steady: how long the start shows, and what that means for the scenario', async () => {
  const { code, out } = await typed('steady', 'a.yaml', ...FEW)
  expect(code).toBe(0)
  expect(out).toMatch(/^The start (leaves no trace|shows for [\d.]+ (s|min|h)); from then on the line makes/)
  expect(out).toContain('The scenario judges a shift after 2 h of work')
  expect(await typed('steady', 'a.yaml', '--replications', '1')).toMatchObject({ code: 2, err: expect.stringContaining('at least 2') })
})

test('balance: tasks of a table, and of a scenario', async () => {
  const table = await typed('balance', 'tasks.csv', '--cycle', '10')
  expect(table).toMatchObject({ code: 0, out: expect.stringContaining('2 stations can do it at 10.00 s, on average times; fewer cannot.') })
  expect(await typed('balance', 'a.yaml', '--stations', '1')).toMatchObject({ code: 0, out: expect.stringContaining('70.00 s at best') })
  expect(JSON.parse((await typed('balance', 'tasks.csv', '--stations', '1', '--json')).out)).toMatchObject({
    document: 'balance',
    cycleSeconds: 13.5,
  })
  const page = await typed('balance', 'tasks.csv', '--cycle', '10', '--out', 'out/balance.html')
  expect(page).toMatchObject({ code: 0, out: expect.stringContaining('Page: out/balance.html') })
  expect(page.files.get('out/balance.html')).toContain('Screening only')
  const valid = new Ajv({ allErrors: true, strict: true }).compile(JSON.parse((await typed('schema', '--of', 'balance')).out) as object)
  const document = JSON.parse((await typed('balance', 'a.yaml', '--stations', '1', '--json')).out) as object
  expect(valid(document), JSON.stringify(valid.errors)).toBe(true)
  expect(valid({ ...document, surprise: 1 })).toBe(false)
  expect(await typed('balance', 'tasks.csv')).toMatchObject({ code: 2, err: expect.stringContaining('--cycle or --stations') })
  expect(await typed('balance', 'tasks.csv', '--cycle', '2')).toMatchObject({
    code: 2,
    err: expect.stringContaining('longer than the cycle'),
  })
})
