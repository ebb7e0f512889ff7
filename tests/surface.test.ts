import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { docsOf } from './surface/docsOf.ts'
import { forgetTrees, surfaceOf } from './surface/surfaceOf.ts'
import { say } from './tidy/finding.ts'
import { headingFindings } from './tidy/headings.ts'
import { DOORS } from './tidy/imports.ts'
import { filesUnder, TOP } from './tidy/sources.ts'
import { usedElsewhere } from './surface/usedElsewhere.ts'

/** Packages with an index; `SURFACE=write npx vitest run tests/surface.test.ts` brings the kept lists up to date. */
const packages = readdirSync(join(TOP, 'packages')).filter((name) => existsSync(join(TOP, 'packages', name, 'src', 'index.ts')))
/** `stats` is its index, `stats.fit` the door of that name */
const doors = packages.flatMap((name) => [name, ...(DOORS[name] ?? []).map((door) => `${name}.${door}`)])

/** Public functions that show no example, and why. */
const WITHOUT_EXAMPLE: Record<string, string> = {
  loadNotebook: 'it reads files: loadNotebook.test.ts writes some',
  answerRuns: 'it answers until its thread is ended: tests/cli/watch.test.ts has the command start it',
  watchNotebook: 'it serves until it is stopped: tests/cli/watch.test.ts has it do so',
  writePage: 'it draws every chart and bundles the script of the page: tests/page opens what it writes',
}

afterAll(forgetTrees)

describe.each(doors)('%s', (name) => {
  const kept = join(TOP, 'tests', 'surface', `${name}.txt`)
  const [of, door] = name.split('.')
  const index = `packages/${of}/src/${door === undefined ? '' : `${door}/`}index.ts`

  test('its public names are those kept beside this test', () => {
    const now = `${surfaceOf(index).join('\n')}\n`
    if (process.env.SURFACE === 'write') writeFileSync(kept, now)
    expect(now).toBe(existsSync(kept) ? readFileSync(kept, 'utf8') : '')
  })

  test('each name is told of, and each function shows what it gives', () => {
    const docs = docsOf(index)
    expect(docs.filter(({ told }) => !told).map((each) => `${each.file}: ${each.name} has no sentence`)).toEqual([])
    const mute = docs.filter(({ kind, example, name: of }) => kind === 'function' && !example && !(of in WITHOUT_EXAMPLE))
    expect(mute.map((each) => `${each.file}: ${each.name} has no example`)).toEqual([])
  })

  test('its values are few, and each is used by others or told of in a document of its package', () => {
    const values = docsOf(index).flatMap(({ name: value, kind }) => (kind === 'type' ? [] : [value]))
    expect(values.filter((value) => !usedElsewhere(of!, value))).toEqual([])
    // more than a reader takes in: give some of them a door of their own
    expect(values.length).toBeLessThanOrEqual(30)
  })

  test('each name is found, once, and functions say what they return', () => {
    const lines = surfaceOf(index).filter((line) => !line.startsWith('# '))
    expect(new Set(lines.map((line) => line.split(' ')[0])).size).toBe(lines.length)
    expect(lines.filter((line) => line.includes('not found'))).toEqual([])
  })
})

test('the command line is no library: every other package has an index', () => {
  expect(packages).toEqual(expect.arrayContaining(['charts', 'kernel', 'line', 'notebook', 'scenario', 'stats', 'study']))
})

test('no kept list is left over', () => {
  const kept = readdirSync(join(TOP, 'tests', 'surface')).filter((name) => name.endsWith('.txt'))
  expect(kept.map((name) => name.replace(/\.txt$/, '')).filter((name) => !doors.includes(name))).toEqual([])
})

test('what is excused from an example has none', () => {
  const all = doors.flatMap((name) => {
    const [of, door] = name.split('.')
    return docsOf(`packages/${of}/src/${door === undefined ? '' : `${door}/`}index.ts`)
  })
  expect(all.filter(({ example }) => !example).map(({ name }) => name)).toEqual(expect.arrayContaining(Object.keys(WITHOUT_EXAMPLE)))
})

describe('indexes', () => {
  const indexes = filesUnder('packages', /^index\.ts$/)

  test('stand under true headings', () => expect(indexes.flatMap(headingFindings).map(say)).toEqual([]))
  test('are those that package.json names', () => {
    for (const name of packages) {
      const { exports } = JSON.parse(readFileSync(join(TOP, 'packages', name, 'package.json'), 'utf8')) as {
        exports: Record<string, Record<string, string>>
      }
      const ways = Object.entries(exports).map(([way, { types, default: built, 'loopwright-source': file }]) => [way, file, types, built])
      expect(ways).toEqual(
        ['.', ...(DOORS[name] ?? []).map((door) => `./${door}`)].map((way) => {
          const folder = way === '.' ? '' : `${way.slice(2)}/`
          return [way, `./src/${folder}index.ts`, `./dist/${folder}index.d.ts`, `./dist/${folder}index.js`]
        }),
      )
      expect(ways.map(([, file]) => existsSync(join(TOP, 'packages', name, file!)))).toEqual(ways.map(() => true))
    }
  })
  test('are left as they stand by the sorter of imports', () => {
    const text = "// Second\nexport { b } from './b.ts'\n\n// First\nexport { a } from './a.ts'\n"
    const sorted = (file: string): string => {
      const words = ['check', '--write', '--linter-enabled=false', '--formatter-enabled=false', `--stdin-file-path=${file}`]
      return spawnSync(join(TOP, 'node_modules/.bin/biome'), words, { cwd: TOP, input: text, encoding: 'utf8' }).stdout
    }
    expect(sorted('packages/stats/src/index.ts')).toBe(text)
    expect(sorted('packages/stats/src/fit/index.ts')).toBe(text)
    expect(sorted('packages/stats/src/other.ts')).not.toBe(text)
  })
  test('scrambled by a sorter are found', () => {
    const text = [
      '// Refusals',
      '',
      '// Moves',
      "export { a } from './a.ts'",
      '// Stops',
      "export { b } from './b.ts'",
      '',
      "export type { A } from './a.ts'",
      '',
      '// Times',
      "export { c } from './a.ts'",
    ].join('\n')
    expect(headingFindings({ file: 'packages/line/src/index.ts', text }).map(say)).toEqual([
      'packages/line/src/index.ts:1: the heading "Refusals" has no exports under it',
      'packages/line/src/index.ts:5: the heading "Stops" has no empty line above it',
      'packages/line/src/index.ts:8: a block of exports has no heading',
      'packages/line/src/index.ts:1: A of ./a.ts stands under "Stops", other names of that file under "Moves"',
      'packages/line/src/index.ts:1: c of ./a.ts stands under "Times", other names of that file under "Moves"',
    ])
  })
})
