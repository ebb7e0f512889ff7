import { expect, test } from 'vitest'
import { main } from './main.ts'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { schemaCheck } from '../../../tests/helpers/schemaCheck.ts'

const VARIED = `${SMALL_LINE}variations:\n  more: { carriers.count: 5 }\n  slow: { stations.B.work.fit: 90 s ± 15 % }\n`
const files = {
  'a.yaml': SMALL_LINE,
  'b.yaml': SMALL_LINE.replace('fit: 70 s', 'fit: 80 s').replace('name: Small loop', 'name: Slow loop'),
  'v.yaml': VARIED,
  'tasks.csv': 'task,seconds,after\nbolt,6,\nwire,2.5,bolt\ntest,5,bolt\n',
}
/** the few runs that will do here, by what each command calls them */
const few = (option = '--replications'): string[] => [option, '4', '--workers', '1']
const FEW = few()
const FEW_CHECKS = few('--check-replications')

async function typed(...words: string[]): Promise<{ code: number; out: string; err: string; files: Map<string, string> }> {
  const shell = memoryShell(files)
  const code = await main(words, shell)
  return { code, ...shell.said, files: shell.files }
}

test('compare two files: answer, table, changed inputs, how sure, and the page', { tags: 'long' }, async () => {
  const { code, out, files: written } = await typed('compare', 'a.yaml', 'b.yaml', ...FEW, '--out', 'out/page.html')
  expect(code).toBe(0)
  expect(out).toMatch(/^With “Small loop” the plan of 70 is met in /)
  expect(out.replace(/\s+/g, ' ')).toMatch(/“Slow loop” makes [\d.]+ fewer units a shift than “Small loop”/)
  expect(out).toContain('stations.B.work.fit')
  expect(out.replaceAll('\n', ' ')).toContain('Every line met the same 4 simulated shifts: the same products, task times and stops.')
  expect(out).toContain('Each shift starts as the one before left the line')
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

test('compare with changes given on the line, beside a chosen base', async () => {
  const sets = ['--set', 'more: carriers.count=5', '--set', 'slow: drive.speed=10 m/min; stations.B.work.fit=90 s ± 15 %']
  const told = await typed('compare', 'a.yaml', ...sets, '--base', 'slow', ...FEW, '--json')
  const { lines, pairs } = JSON.parse(told.out) as {
    lines: { name: string; changed: { path: string }[]; variation: string | null }[]
    pairs: { second: string }[]
  }
  expect(lines.map(({ name, variation }) => [name, variation])).toEqual([
    ['slow', 'slow'],
    ['Small loop', null],
    ['more', 'more'],
  ])
  expect(lines[1]!.changed.map(({ path }) => path)).toContain('stations.B.work.fit')
  expect(pairs.map(({ second }) => second)).toEqual(['slow', 'slow', 'Small loop'])
  expect(await typed('compare', 'a.yaml', ...sets, '--base', 'slw', ...FEW)).toMatchObject({
    code: 2,
    err: expect.stringContaining('did you mean "slow"?'),
  })
  const wrong = await typed('compare', 'a.yaml', '--set', 'x: drive.speed=10 m/mn', ...FEW)
  expect(wrong.code).toBe(2)
  expect(wrong.err).toContain('| --set drive.speed=10 m/mn\n        |                      ^^^^')
  expect((await typed('compare', 'a.yaml', '--set', 'x: drive.speed', ...FEW)).err).toContain('  x: drive.speed\n     ^')
  expect((await typed('compare', 'a.yaml', '--set', 'x: carriers.count=3', '--set', 'x: carriers.count=2', ...FEW)).err).toContain(
    'two lines are called "x"',
  )
})

test('compare more than ten lines: each beside the base', async () => {
  const sets = Array.from({ length: 11 }, (_, index) => ['--set', `line ${index}: stations.B.work.fit=${60 + index} s ± 15 %`]).flat()
  const { out, code } = await typed('compare', 'a.yaml', ...sets, '--replications', '2', '--workers', '1', '--json')
  expect(code).toBe(0)
  expect((JSON.parse(out) as { pairs: unknown[] }).pairs).toHaveLength(11)
})

const GRID = ['grid', 'a.yaml', '--carriers', '3..4', '--set', 'drive.speed=10,12 m/min']

test('a grid: answer, table, how sure, and the page with its pictures', { tags: 'long' }, async () => {
  const { code, out, err, files: written } = await typed(...GRID, ...FEW, '--out', 'out/grid.html')
  expect(code).toBe(0)
  expect(err).toContain('4 settings, 4 replications each: 16 runs, seed 1')
  expect(out).toMatch(/^The plan of 70 is met by no setting|^The plan of 70 is met in/)
  expect(out).toMatch(/Most is made by [34] carriers with drive\.speed 1[02] m\/min: /)
  expect(out).toContain('Carriers')
  expect(out).toContain('Each of 4 settings was simulated for the same 4 shifts')
  expect(out.split('\n').every((line) => [...line].length <= 80)).toBe(true)
  expect(written.get('out/grid.html')).toContain('Table of shaded cells')
  expect(written.get('out/grid.html')).toContain('a curve for each level of drive.speed')
})

test('a grid says what is wrong with its options, all at once and where', async () => {
  const wrong = await typed('grid', 'a.yaml', '--set', 'drive.sped=1,2 m/s', '--set', 'carriers.length=0.8,9 m', ...FEW)
  expect(wrong.code).toBe(2)
  expect(wrong.err).toContain('| --set drive.sped=1 m/s\n        |       ^^^^')
  expect(wrong.err).toContain('carriers.length=9 m')
  expect((await typed('grid', 'a.yaml', ...FEW)).err).toContain('a grid varies something')
  expect((await typed('grid', 'a.yaml', '--set', 'drive.speed=10,,12 m/min', ...FEW)).err).toContain(
    '  drive.speed=10,,12 m/min\n                 ^',
  )
  expect((await typed('grid', 'a.yaml', '--carriers', '3', '--set', 'drive.speed=10 m/min', ...FEW)).err).toContain('at least two settings')
  expect((await typed('grid', 'a.yaml', '--carriers', '8..12', ...FEW)).err).toContain('takes 1 to 9 carriers, not 10')
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
  ['grid', ['grid', 'a.yaml', '--carriers', '3..4', '--set', 'drive.speed=10,11 m/min']],
  ['drivers', ['drivers', 'a.yaml']],
  ['losses', ['losses', 'a.yaml']],
  ['steady', ['steady', 'a.yaml']],
  ['order', ['order', 'a.yaml', '--zones', 'Z04..Z06', '--least-gain', '5', '--try', 'B@Z03']],
] as const

test.each(documents)('%s --json is what its schema says, and the page is written', async (name, words) => {
  const {
    code,
    out,
    files: written,
  } = await typed(...words, ...(name === 'order' ? FEW_CHECKS : name === 'steady' ? few('--runs') : FEW), '--json', '--out', 'page.html')
  expect(code).toBe(0)
  const schema = JSON.parse((await typed('schema', '--of', name)).out) as object
  const valid = schemaCheck(schema)
  const document = JSON.parse(out) as Record<string, unknown>
  expect(valid(document), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
  expect(valid({ ...document, surprise: 1 })).toBe(false)
  expect(written.get('page.html')).toContain('Screening only')
})

test('drivers: what limits and why, one carrier more or less', async () => {
  const { code, out } = await typed('drivers', 'a.yaml', ...FEW)
  expect(code).toBe(0)
  expect(out).toMatch(
    /^What limits the line: B Fit, which can do about \d+ units a shift[\s\S]*\nOf what takes time, 1 % less of B Fit brings most: 0\.\d+ % more/,
  )
  expect(out).toMatch(/One carrier more than 4[: ]/)
  expect(out).not.toContain('Both say the same')
  expect(out.split('\n').every((line) => [...line].length <= 80)).toBe(true)
})

test('losses: forecast, ideal, a row for each cause', async () => {
  const { code, out } = await typed('losses', 'a.yaml', ...FEW)
  expect(code).toBe(0)
  for (const name of ['Ideal: none of these', 'jam', 'breaks', 'exchange at B', 'Forecast: as it stands']) expect(out).toContain(name)
  expect(out.split('\n').every((line) => [...line].length <= 80)).toBe(true)
})

test('losses: the page draws them from the ideal down to the forecast', async () => {
  const { code, files: written } = await typed('losses', 'a.yaml', ...FEW, '--out', 'page.html')
  expect(code).toBe(0)
  expect(written.get('page.html')).toContain('from the ideal down to the forecast by')
})

test('order: the choice, today, the one given by hand, and what it promises', async () => {
  const { code, out } = await typed('order', 'a.yaml', '--zones', 'Z04..Z06', '--try', 'B@Z03', ...FEW_CHECKS)
  expect(code).toBe(0)
  expect(out).toContain('(given)')
  expect(out).toContain('The difference from today’s order was measured in other simulated shifts')
  expect(await typed('order', 'a.yaml', '--move', 'X', ...FEW_CHECKS)).toMatchObject({
    code: 2,
    err: expect.stringContaining('there are A, B, C'),
  })
})

test('steady: how long the start shows, and what that means for the scenario', async () => {
  const { code, out } = await typed('steady', 'a.yaml', ...few('--runs'))
  expect(code).toBe(0)
  expect(out).toMatch(/^(Nothing needs to be discarded|Discard \d+ (s|min|h)[\s\S]*enough\.\nFrom then on the loop makes)/)
  expect(out).toContain('The scenario counts a shift after 2 h of work')
  expect(await typed('steady', 'a.yaml', '--runs', '1')).toMatchObject({ code: 2, err: expect.stringContaining('at least 2') })
})

test('balance: tasks of a table, and of a scenario', async () => {
  const table = await typed('balance', 'tasks.csv', '--cycle', '10')
  expect(table).toMatchObject({
    code: 0,
    out: expect.stringContaining('2 stations can share the 3 tasks in a cycle of 10.0 s by mean times; fewer\ncannot.'),
  })
  expect(await typed('balance', 'a.yaml', '--stations', '1')).toMatchObject({
    code: 0,
    out: expect.stringContaining('One station needs a cycle of 70 s for the '),
  })
  expect(JSON.parse((await typed('balance', 'tasks.csv', '--stations', '1', '--json')).out)).toMatchObject({
    document: 'balance',
    cycleSeconds: 13.5,
  })
  const page = await typed('balance', 'tasks.csv', '--cycle', '10', '--out', 'out/balance.html')
  expect(page).toMatchObject({ code: 0, out: expect.stringContaining('Page: out/balance.html') })
  expect(page.files.get('out/balance.html')).toContain('Screening only')
  const valid = schemaCheck(JSON.parse((await typed('schema', '--of', 'balance')).out) as object)
  const document = JSON.parse((await typed('balance', 'a.yaml', '--stations', '1', '--json')).out) as object
  expect(valid(document), JSON.stringify(valid.errors)).toBe(true)
  expect(valid({ ...document, surprise: 1 })).toBe(false)
  expect(await typed('balance', 'tasks.csv')).toMatchObject({ code: 2, err: expect.stringContaining('--cycle or --stations') })
  expect(await typed('balance', 'tasks.csv', '--cycle', '2')).toMatchObject({
    code: 2,
    err: expect.stringContaining('longer than the cycle'),
  })
})
