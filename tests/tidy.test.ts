import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { banFindings, exportAllFindings, idlePermissions, MAY_USE, skipFindings, unfinishedFindings } from './tidy/bans.ts'
import { idleExportFindings } from './tidy/exports.ts'
import { type Finding, say } from './tidy/finding.ts'
import { circleFindings, importFindings, MAY_IMPORT, testImportFindings } from './tidy/imports.ts'
import { besideFindings, crowdFindings, lengthFindings, TOP_LEVEL, topLevelFindings } from './tidy/layout.ts'
import { filesUnder, TOP } from './tidy/sources.ts'
import { UNTESTED } from './tidy/untested.ts'
import { hostFindings, verdictFindings } from './tidy/words.ts'

const code = filesUnder('packages', /\.ts$/).filter((source) => !source.file.includes('/bin/'))
const tests = filesUnder('tests', /\.ts$/)
const notebooks = filesUnder('notebooks', /\.ts$/)
const documents = filesUnder('.', /\.md$/)
const scenarios = filesUnder('scenarios', /\.ya?ml$/)
const settings = filesUnder('.', /\.json$/).filter((source) => !source.file.startsWith('tests/'))
const ours = [...code, ...tests, ...notebooks]

const none = (findings: readonly Finding[]) => expect(findings.map(say)).toEqual([])

describe('the project keeps its rules', () => {
  test('packages import only what the matrix allows', () => none(code.flatMap(importFindings)))
  test('every package is in the matrix', () =>
    expect(Object.keys(MAY_IMPORT).sort()).toEqual(
      readdirSync(join(TOP, 'packages'), { withFileTypes: true })
        .flatMap((e) => (e.isDirectory() ? [e.name] : []))
        .sort(),
    ))
  test('nobody imports a test', () => none([...code, ...tests].flatMap(testImportFindings)))
  test('no circle of imports, of types either', () => none(circleFindings(code)))
  test('the top level is as listed', () => {
    const ignored = readFileSync(join(TOP, '.gitignore'), 'utf8')
      .split('\n')
      .map((line) => line.replace(/\/$/, ''))
    none(topLevelFindings(readdirSync(TOP), ignored))
  })
  test('nothing hides a clock, a printer or a source of randomness', () => none([...ours.flatMap(banFindings), ...idlePermissions(ours)]))
  test('no `export *`', () => none(code.flatMap(exportAllFindings)))
  test('what is exported is taken, and not by tests alone', () => {
    const programs = filesUnder('packages', /\.c?js$/)
    none(idleExportFindings(code, [...tests, ...notebooks, ...programs], filesUnder('packages', /\.md$/)))
  })
  test('no `.only`, no skip without a reason', () => none([...code, ...tests].flatMap(skipFindings)))
  test('no unfinished work', () => none([...ours, ...documents, ...scenarios].flatMap(unfinishedFindings)))
  test('files are short, or say why not', () => none(ours.flatMap(lengthFindings)))
  test('no folder of sources is crowded', () => none(crowdFindings(code)))
  test('each source file has its test beside it, or a reason', () => none(besideFindings(code, UNTESTED)))
  test('no verdict that belongs to a licensed person', () =>
    none([...code.filter((s) => !s.file.endsWith('.test.ts')), ...notebooks, ...documents, ...scenarios].flatMap(verdictFindings)))
  test('no package host', () =>
    none([...ours, ...documents, ...settings, { file: '.npmrc', text: readFileSync(join(TOP, '.npmrc'), 'utf8') }].flatMap(hostFindings)))
  test('the rules have something to look at', () => {
    expect(code.length).toBeGreaterThan(100)
    expect(documents.length).toBeGreaterThan(4)
    expect(settings.map((source) => source.file)).toContain('package-lock.json')
  })
})

describe('the rules find what they are for', () => {
  const at = (file: string, ...lines: string[]) => ({ file, text: lines.join('\n') })
  const said = (findings: readonly Finding[]) => findings.map(say)

  test('a package that imports what it may not', () => {
    const bad = at('packages/kernel/src/loop.ts', "import { a } from './a.ts'", '', "import type { LineSpec } from '@loopwright/line'")
    expect(said(importFindings(bad))).toEqual([
      'packages/kernel/src/loop.ts:3: kernel may not import @loopwright/line; it may import nothing',
    ])
    expect(said(importFindings(at('packages/line/src/a.ts', "import 'zod'")))).toEqual([
      'packages/line/src/a.ts:1: line may not import zod; it may import kernel, stats',
    ])
    expect(said(importFindings(at('packages/line/src/a.ts', "const z = await import('zod')")))).toHaveLength(1)
    expect(said(importFindings(at('packages/line/src/a.ts', "export const z: import('zod').ZodType = 0")))).toHaveLength(1)
    expect(said(importFindings(at('packages/stats/src/a.ts', "export { readFileSync } from 'node:fs'")))).toHaveLength(1)
  })
  test('the engine, where no study is', () => {
    const bad = "import { simulate } from '@loopwright/line'"
    const inFile = (file: string) => importFindings(at(file, bad)).map(({ message }) => message)
    expect(inFile('packages/cli/src/a.ts')).toEqual(['simulate is for study alone, use a study'])
    expect([...inFile('packages/study/src/a.ts'), ...inFile('packages/scenario/src/a.test.ts')]).toEqual([])
  })
  test('values where only types may come', () => {
    const bad = at(
      'packages/charts/src/plan/plan.ts',
      "import { type LineSpec, x } from '@loopwright/line'",
      "import type { Distribution } from '@loopwright/stats'",
    )
    expect(said(importFindings(bad))).toEqual([
      'packages/charts/src/plan/plan.ts:1: charts may import only types from @loopwright/line, use import type',
    ])
  })
  test('deep paths, foreign folders, names without an ending, a package that names itself', () => {
    const one = (line: string) => said(importFindings(at('packages/line/src/a.ts', line)))
    expect(one("import { a } from '@loopwright/stats/src/a.ts'")).toEqual([
      'packages/line/src/a.ts:1: the deep path "@loopwright/stats/src/a.ts" is banned, use @loopwright/stats or @loopwright/stats/fit or @loopwright/stats/procedures or @loopwright/stats/special or @loopwright/stats/worlds',
    ])
    expect(one("import { a } from '../../stats/src/a.ts'")).toEqual([
      'packages/line/src/a.ts:1: the import of "../../stats/src/a.ts" leaves the package, use @loopwright/…',
    ])
    expect(one("import { a } from './b'")).toEqual(['packages/line/src/a.ts:1: "./b" has no ending, use "./b.ts"'])
    expect(one("import { a } from '@loopwright/line'")).toEqual([
      'packages/line/src/a.ts:1: line imports itself by name, use a relative path',
    ])
  })
  test('Node where a browser must do', () => {
    expect(said(importFindings(at('packages/notebook/src/page/page.ts', "import { join } from 'node:path'")))).toEqual([
      'packages/notebook/src/page/page.ts:1: node:path is banned here, use effects that are passed in',
    ])
    expect(importFindings(at('packages/notebook/src/runner/run.ts', "import { join } from 'node:path'"))).toEqual([])
  })
  test('tests may use the test tools, and no other package than their own may', () => {
    expect(
      importFindings(at('packages/kernel/src/a.test.ts', "import { test } from 'vitest'", "import { join } from 'node:path'")),
    ).toEqual([])
    expect(importFindings(at('packages/kernel/src/a.test.ts', "import { x } from '@loopwright/line'"))).toHaveLength(1)
    expect(importFindings(at('packages/cli/src/a.test.ts', "import { x } from '@loopwright/stats'"))).toEqual([])
    expect(importFindings(at('packages/kernel/src/a.test.ts', "import { x } from '../../../tests/helpers/x.ts'"))).toEqual([])
    expect(importFindings(at('packages/kernel/src/a.ts', "import { x } from '../../../tests/helpers/x.ts'"))).toHaveLength(1)
  })
  test('a test that is imported', () => {
    expect(said(testImportFindings(at('packages/kernel/src/a.test.ts', "import { x } from './b.test.ts'")))).toEqual([
      'packages/kernel/src/a.test.ts:1: the import of the test "./b.test.ts" is banned, use a file of tests/helpers',
    ])
    expect(testImportFindings(at('packages/kernel/src/a.test.ts', "import { x } from '../../../tests/helpers/x.ts'"))).toEqual([])
  })
  test('a circle of imports', () => {
    const bad = [
      at('packages/line/src/a.ts', "import { b } from './b.ts'"),
      at('packages/line/src/b.ts', "import { c } from './c.ts'"),
      at('packages/line/src/c.ts', "import { b } from './b.ts'"),
    ]
    expect(said(circleFindings(bad))).toEqual([
      'packages/line/src/b.ts:1: a circle of imports is banned, use a third file: packages/line/src/b.ts → packages/line/src/c.ts → packages/line/src/b.ts',
    ])
    const types = [
      at('packages/line/src/a.ts', "import type { b } from './b.ts'"),
      at('packages/line/src/b.ts', "import { a } from './a.ts'"),
    ]
    expect(circleFindings(types)).toHaveLength(1)
    expect(circleFindings(types, ['packages/line/src/a.ts'])).toHaveLength(1)
    expect(circleFindings(types, ['packages/line/src/a.ts', 'packages/line/src/b.ts'])).toEqual([])
  })
  test('something new at the top, and something gone', () => {
    expect(said(topLevelFindings([...TOP_LEVEL, 'notes.md', '.git', 'out'], ['out']))).toEqual([
      'notes.md:1: a new name at the top is banned, use packages, scenarios, notebooks or tests',
    ])
    expect(
      said(
        topLevelFindings(
          TOP_LEVEL.filter((name) => name !== 'LICENSE'),
          [],
        ),
      ),
    ).toEqual(['LICENSE:1: is missing at the top, use git to bring it back'])
  })
  test('hidden clocks and printers, but not members and fields of that name', () => {
    const one = (line: string, file = 'packages/line/src/a.ts') => said(banFindings(at(file, line)))
    expect(one('const u = Math.random()')).toEqual(['packages/line/src/a.ts:1: Math.random is banned, use a named stream of stats'])
    expect(one('const t = Date.now()')).toEqual(['packages/line/src/a.ts:1: Date.now is banned, use the effect `now` that is passed in'])
    expect(one('const t = performance.now()')).toHaveLength(1)
    expect(one("console.log('x')")).toHaveLength(1)
    expect(one("globalThis.console.log('x')")).toHaveLength(0 + 1)
    expect(one('const seen = process.argv')).toHaveLength(1)
    expect(one("child.process.kill(); const x = { console: 1 }; valueOf() // process, and 'Math.random' in words")).toEqual([])
    expect(one('const seen = process.argv', 'packages/cli/src/cli.ts')).toEqual([])
    expect(one('const u = Math.random()', 'packages/cli/src/cli.ts')).toHaveLength(1)
    expect(MAY_USE.every((row) => row.why.length > 10)).toBe(true)
    const leave = [{ file: /^packages\/cli\//, names: ['process'], why: 'effects are made there' }]
    expect(idlePermissions([at('packages/cli/src/cli.ts', 'process.exit(0)')], leave)).toEqual([])
    expect(said(idlePermissions([at('packages/line/src/a.ts', 'process.exit(0)')], leave))).toHaveLength(1)
  })
  test('export *', () => {
    expect(said(exportAllFindings(at('packages/line/src/index.ts', "export * from './a.ts'")))).toEqual([
      'packages/line/src/index.ts:1: `export *` is banned, use explicit names under a heading',
    ])
    expect(exportAllFindings(at('packages/line/src/index.ts', "export { a } from './a.ts'"))).toEqual([])
  })
  test('exports that nobody takes, or tests alone', () => {
    const own = at(
      'packages/line/src/a.ts',
      '/** used() is told of here */',
      'export const used = 1',
      'export function idle() {}',
      'export class Tried {}',
    )
    const code = [own, at('packages/line/src/b.ts', 'used'), at('packages/line/src/index.ts', "export { Tried } from './a.ts'")]
    const tried = at('packages/line/src/a.test.ts', 'new Tried()')
    expect(said(idleExportFindings([...code, tried], [], []))).toEqual(['packages/line/src/a.ts:3: nobody takes idle: do not export it'])
    expect(said(idleExportFindings([...code.slice(0, 2), tried], [], []))).toEqual([
      'packages/line/src/a.ts:3: nobody takes idle: do not export it',
      'packages/line/src/a.ts:4: only tests use Tried: remove it, or move it to them',
    ])
    expect(
      idleExportFindings([...code.slice(0, 2), tried], [at('notebooks/a.ts', 'idle()')], [at('packages/line/README.md', '`Tried`')]),
    ).toEqual([])
  })
  test('tests that run alone or not at all', () => {
    const one = (...lines: string[]) => said(skipFindings(at('tests/a.test.ts', ...lines)))
    expect(one("test.only('x', () => {})")).toEqual(['tests/a.test.ts:1: `.only` is banned, use `vitest -t`'])
    expect(one("describe.each([1]).only('x', () => {})")).toHaveLength(1)
    expect(one("test.skip('x', () => {})")).toEqual([
      'tests/a.test.ts:1: `.skip` without a reason is banned, use a comment "// skipped because …"',
    ])
    expect(one('// skipped because the machine has one core', "test.skipIf(cores < 2)('x', () => {})")).toEqual([])
    expect(one("list.only('x')")).toEqual([])
  })
  test('unfinished work', () => {
    const mark = ['TO', 'DO'].join('')
    expect(said(unfinishedFindings(at('packages/line/src/a.ts', 'const a = 1', `// ${mark}: later`)))).toEqual([
      `packages/line/src/a.ts:2: ${mark} is banned, use a finished sentence in the docs or finish the work`,
    ])
  })
  test('a file that is too long and does not say why', () => {
    const long = Array.from({ length: 301 }, (_, i) => `const a${i} = ${i}`)
    expect(said(lengthFindings(at('tests/a.ts', ...long, '')))).toEqual([
      'tests/a.ts:301: a file over 300 lines is banned, use two, or say "over 300 lines because …" in its header',
    ])
    expect(lengthFindings(at('tests/a.ts', ...long.slice(1), ''))).toEqual([])
    expect(lengthFindings(at('tests/a.ts', '/** Over 300 lines because the table is one table. */', ...long))).toEqual([])
  })
  test('a folder with too many sources, tests not counted', () => {
    const files = (count: number, ending: string) =>
      Array.from({ length: count }, (_, i) => at(`packages/line/src/moves/a${i}${ending}`, ''))
    expect(said(crowdFindings(files(26, '.ts')))).toEqual([
      'packages/line/src/moves:1: a folder of 26 sources is banned, use 25 at most and rooms by noun',
    ])
    expect(crowdFindings([...files(25, '.ts'), ...files(25, '.test.ts')])).toEqual([])
  })
  test('a source file without a test, and an excuse that is no longer needed', () => {
    const a = at('packages/line/src/a.ts', 'export const a = 1')
    const types = at(
      'packages/line/src/t.ts',
      "import type { B } from './b.ts'",
      'export interface A { readonly b: B }',
      "export type { B } from './b.ts'",
    )
    expect(said(besideFindings([a, types], {}))).toEqual([
      'packages/line/src/a.ts:1: has no test beside it, use packages/line/src/a.test.ts or a row with a reason in tests/tidy/untested.ts',
    ])
    expect(besideFindings([a], { 'packages/line/src/a.ts': 'run by all tests of the line' })).toEqual([])
    expect(said(besideFindings([a, at('packages/line/src/a.test.ts', '')], { 'packages/line/src/a.ts': 'old' }))).toEqual([
      'packages/line/src/a.ts:1: is excused from a test beside it and need not be, use the row no more',
    ])
  })
  test('a verdict, but not the word in quotes, a longer word or a name in code', () => {
    const instead = 'as a verdict is banned, use "above guidance value", "within guidance value, assumptions: …" or "not checked"'
    expect(said(verdictFindings(at('README.md', 'a', 'The corner is safe.')))).toEqual([`README.md:2: "safe" ${instead}`])
    expect(said(verdictFindings(at('packages/line/src/a.ts', `const a = \`\${b} is compliant\``)))).toEqual([
      `packages/line/src/a.ts:1: "compliant" ${instead}`,
    ])
    expect(verdictFindings(at('README.md', 'It never prints "safe". A safety stop.'))).toEqual([])
    expect(verdictFindings(at('packages/line/src/a.ts', 'const csp = "style-src \'unsafe-inline\'"; schema.safeParse(1) // safe'))).toEqual(
      [],
    )
  })
  test('a package host', () => {
    const host = ['https://registry', 'example.org'].join('.')
    expect(said(hostFindings(at('package-lock.json', '{', `"resolved": "${host}/a.tgz"`)))).toEqual([
      'package-lock.json:2: an address of a package host is banned, use omit-lockfile-registry-resolved',
    ])
    expect(said(hostFindings(at('.npmrc', ['registry', host].join('='))))).toEqual([
      ".npmrc:1: a package host is banned, use the machine's own settings",
    ])
  })
})
