import { expect, test } from 'vitest'
import { main } from './main.ts'
import { memoryShell, SMALL_LINE } from './memoryShell.ts'

const VARIED = `${SMALL_LINE}variations:\n  more: { carriers.count: 5 }\n  slow: { stations.B.work.fit: 90 s ± 15 % }\n`
const files = {
  'a.yaml': SMALL_LINE,
  'b.yaml': SMALL_LINE.replace('fit: 70 s', 'fit: 80 s').replace('name: Small loop', 'name: Slow loop'),
  'v.yaml': VARIED,
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
