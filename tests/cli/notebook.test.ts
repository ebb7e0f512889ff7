/** Notebooks as they are typed: in folders that know nothing of this project, of any kind of package. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { DEMO, start } from './spawned.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-notebook-'))
afterAll(() => rmSync(folder, { recursive: true }))

function home(name: string, files: Readonly<Record<string, string>>): string {
  const at = join(folder, name)
  mkdirSync(at, { recursive: true })
  writeFileSync(join(at, 'line.yaml'), readFileSync(join(TOP, DEMO), 'utf8'))
  for (const [file, text] of Object.entries(files)) writeFileSync(join(at, file), text)
  return at
}

const STUDY = `import { notebook } from '@loopwright/notebook'

interface Head {
  readonly size: number
}

export default notebook({ title: 'A', scenario: 'line.yaml' }, async ({ scenario, sweep, story, show, prose }) => {
  const head: Head = { size: scenario.line.zones.length }
  const tale = story(await sweep({ carriers: [10], replications: 2 }))
  show(tale.answer)
  prose(\`The line has \${head.size} zones.\`)
})
`

describe.each([
  ['no package', {}],
  ['a package of modules', { 'package.json': '{ "type": "module" }' }],
  ['a package of the older kind', { 'package.json': '{ "type": "commonjs" }' }],
])('in %s', (name, files) => {
  test('a notebook is carried out, and its page is written', async () => {
    const at = home(name, { ...files, 'study.ts': STUDY })
    const { code, out, err } = await start(['notebook', 'study.ts'], at).ended
    expect({ code, err: err.split('\n').filter((line) => /rror/.test(line)) }).toEqual({ code: 0, err: [] })
    expect(out).toContain('The line has 22 zones.')
    expect(err).toContain('study.ts: its studies are simulated\n')
    expect(readFileSync(join(at, 'out/study.html'), 'utf8')).toContain('The line has 22 zones.')
  })
})

test('from another folder the scenario is found beside the notebook', async () => {
  home('elsewhere', { 'study.ts': STUDY })
  const { code, out } = await start(['notebook', 'elsewhere/study.ts', '--out', 'elsewhere/page.html'], folder).ended
  expect(code).toBe(0)
  expect(out).toContain('Page: elsewhere/page.html')
})

test('what fails is told in its place, with line and column; the others are carried out, and the code says so', async () => {
  const wrong = STUDY.replace('replications: 2', 'replication: 2').replace('  prose(', '  show(tale.throughput)\n  prose(')
  const at = home('wrong', { 'study.ts': wrong })
  const { code, out, err } = await start(['notebook', 'study.ts'], at).ended
  expect(code).toBe(1)
  expect(out).toContain(`study.ts:9:52  failed
  sweep knows nothing called "replication"
      9 |   const tale = story(await sweep({ carriers: [10], replication: 2 }))
        |                                                    ^^^^^^^^^^^
  Did you mean "replications"? sweep takes carriers, replications and seed.

study.ts:10:3  waits`)
  expect(out).toContain('The line has 22 zones.')
  expect(err).toContain('a part of the notebook failed: study.ts:9:52')
  expect(readFileSync(join(at, 'out/study.html'), 'utf8')).toContain('sweep knows nothing called')
})

test.each([
  ['a head with a misspelt name', STUDY.replace('title:', 'titel:'), 'study.ts:7:27', 'Did you mean "title"?'],
  ['a misspelt study', STUDY.replace('sweep, story', 'swep, story'), 'study.ts:7:', 'Did you mean "sweep"?'],
  ['no program', STUDY.replace('})\n', '\n'), 'study.ts:', 'Unexpected end of file'],
  ['a scenario that is not there', STUDY.replace('line.yaml', 'lime.yaml'), 'lime.yaml', 'there is no file'],
])('%s', async (name, text, place, said) => {
  const { code, out, err } = await start(['notebook', 'study.ts'], home(name, { 'study.ts': text })).ended
  expect(code).not.toBe(0)
  expect(out + err).toContain(place)
  expect(out + err).toContain(said)
  expect(out + err).not.toContain('defect of loopwright')
})

test('what `new` makes works at once, in an empty folder elsewhere', async () => {
  const at = join(folder, 'empty')
  mkdirSync(at)
  expect((await start(['new', '.'], at).ended).code).toBe(0)
  const checked = await start(['check', 'line.yaml'], at).ended
  expect([checked.code, checked.err]).toEqual([0, ''])
  const { code, out, err } = await start(['notebook', 'study.ts', '--replications', '3', '--workers', '1'], at).ended
  expect([code, /failed/.test(out + err)]).toEqual([0, false])
  expect(readFileSync(join(at, 'out/study.html'), 'utf8')).toContain(
    '<h1>How many carriers does the line need to make 400 units a shift?</h1>',
  )
})
