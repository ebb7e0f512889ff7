import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import vm from 'node:vm'
import { build } from 'esbuild'
import { publint } from 'publint'
import { formatMessage } from 'publint/utils'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { doorsOf, installed, NODE_LINES, nodeOf, PACKAGES, run } from './packing.ts'

const DEMO = join(TOP, 'scenarios/ten-zone-learning-loop.yaml')
const STUDY = ['sweep', 'Linie für alle.yaml', '--carriers', '4..6', '--replications', '30', '--json', '--fresh', '--workers', '1']

describe('the packages, packed and installed into an empty folder', { tags: 'long' }, () => {
  let top = ''
  let folder = ''
  const at = (name: string): string => join(folder, 'node_modules/@loopwright', name)
  const command = (node: string, ...words: string[]) => run(node, [join(at('cli'), 'bin/loopwright.js'), ...words], folder)

  beforeAll(() => {
    const cache = join(TOP, 'node_modules/.cache')
    mkdirSync(cache, { recursive: true })
    // not below this project's own modules: what is missing there must not be found here
    top = mkdtempSync(join(process.env.TMPDIR ?? '/tmp', 'packed '))
    folder = installed(top)
    cpSync(DEMO, join(folder, 'Linie für alle.yaml'))
  })
  afterAll(() => rmSync(top, { recursive: true, force: true }))

  test('hold what is published and nothing else: no source, no test', () => {
    for (const name of PACKAGES) {
      const files = readdirSync(at(name), { recursive: true, encoding: 'utf8' })
      expect(files.filter((file) => /(^|[\\/])src([\\/]|$)|\.test\.|tsbuildinfo|(?<!\.d)\.ts$/.test(file))).toEqual([])
      expect(files).toContain('README.md')
    }
  })

  test.each(PACKAGES)('%s has nothing that publint finds', async (name) => {
    const { messages, pkg } = await publint({ pkgDir: at(name), level: 'suggestion', pack: false })
    expect(messages.map((message) => formatMessage(message, pkg as Record<string, unknown>, { color: false }))).toEqual([])
  })

  test('every way in gives values to a module', () => {
    const doors = PACKAGES.flatMap(doorsOf)
    expect(doors.length).toBeGreaterThan(PACKAGES.length)
    const code = doors
      .map((door) => `if (Object.keys(await import('${door}')).length === 0) throw new Error('${door} is empty')`)
      .join('\n')
    writeFileSync(join(folder, 'doors.mjs'), code)
    expect(run(process.execPath, ['doors.mjs'], folder)).toEqual({ code: 0, out: '', err: '' })
  })

  test('every way in has types, which a strict compiler takes', () => {
    const lines = PACKAGES.flatMap(doorsOf).map(
      (door, index) => `import * as door${index} from '${door}'\nexport const keys${index}: string[] = Object.keys(door${index})`,
    )
    const wrong = `import { replicate } from '@loopwright/study'\n// @ts-expect-error a seed is a text\nexport const runs = replicate({} as never, { replications: 1 }, { seed: 1 })`
    writeFileSync(join(folder, 'types.ts'), `${lines.join('\n')}\n${wrong}\n`)
    for (const [module, resolution] of [
      ['NodeNext', 'NodeNext'],
      ['ESNext', 'Bundler'],
    ] as const) {
      const words = ['--noEmit', '--strict', '--skipLibCheck', '--target', 'ES2023', '--module', module, '--moduleResolution', resolution]
      const types = ['--types', 'node', '--typeRoots', join(TOP, 'node_modules/@types')]
      const { code, out } = run(
        process.execPath,
        [join(TOP, 'node_modules/@typescript/native/bin/tsc'), ...words, ...types, 'types.ts'],
        folder,
      )
      expect([module, code, out]).toEqual([module, 0, ''])
    }
  })

  let fromSource: ReturnType<typeof run> | null = null
  test.for(NODE_LINES)('the command prints the bytes that it prints from source, on Node %i', (line, { skip }) => {
    const found = nodeOf(line)
    // skipped because a machine without a registry has one Node alone
    if ('why' in found) return skip(found.why)
    const node = found.path
    cpSync(DEMO, join(top, 'Linie für alle.yaml'))
    fromSource ??= run(process.execPath, [join(TOP, 'packages/cli/bin/loopwright.js'), ...STUDY], top)
    const source = fromSource
    expect(source.code).toBe(0)
    const packed = command(node, ...STUDY)
    expect(packed.err).not.toContain('failed')
    expect([packed.code, packed.out === source.out]).toEqual([0, true])
    expect(command(node, '--version').out).toMatch(/^loopwright \d+\.\d+\.\d+, engine \d+\.\d+\.\d+\n$/)
  })

  test('a notebook of one’s own finds the packages, and writes its page', () => {
    const body = `async ({ sweep, story, show }) => { const result = await sweep({ carriers: [4, 5] }); show(...story(result).cells) }`
    writeFileSync(
      join(folder, 'ring.ts'),
      `import { notebook } from '@loopwright/notebook'\nexport default notebook({ title: 'Ring', scenario: 'Linie für alle.yaml' }, ${body})\n`,
    )
    const { code, err } = command(process.execPath, 'notebook', 'ring.ts', '--replications', '5', '--fresh', '--out', 'Seite.html')
    expect([code, err.includes('failed')]).toEqual([0, false])
    expect(readFileSync(join(folder, 'Seite.html'), 'utf8')).toMatch(/^<!doctype html>/i)
  })

  test.each(['beside the packages', 'elsewhere'])('an editor finds types and schema in a folder that `new` has made, %s', (where) => {
    const home = where === 'elsewhere' ? mkdtempSync(join(process.env.TMPDIR ?? '/tmp', 'new ')) : folder
    expect(run(process.execPath, [join(at('cli'), 'bin/loopwright.js'), 'new', 'line'], home).code).toBe(0)
    const line = join(home, 'line')
    const study = readFileSync(join(line, 'study.ts'), 'utf8')
    writeFileSync(join(line, 'wrong.ts'), study.replace('replications: 40', 'replication: 40'))
    // the one that `new` has made has no error, the one beside it has one
    const { out } = run(process.execPath, [join(TOP, 'node_modules/@typescript/native/bin/tsc'), '-p', '.'], line)
    expect(out).toMatch(/^wrong\.ts\(8,\d+\): error TS2561: [^\n]*Did you mean to write 'replications'\?\n$/)
    const [, schema] = /^# yaml-language-server: \$schema=(.*)$/m.exec(readFileSync(join(line, 'line.yaml'), 'utf8'))!
    expect(JSON.parse(readFileSync(join(line, schema!), 'utf8'))).toMatchObject({ title: expect.any(String) })
    if (home !== folder) rmSync(home, { recursive: true })
  })

  test('studies start threads of their own from the package', () => {
    const code = `import { readFileSync } from 'node:fs'
import { readScenario } from '@loopwright/scenario'
import { replicate } from '@loopwright/study'
const { scenario } = readScenario(readFileSync('Linie für alle.yaml', 'utf8'))
const outputs = async (workers) => (await replicate(scenario.line, { replications: 6 }, { seed: '1', workers })).map(({ output }) => output).join()
const [threads, here] = [await outputs(2), await outputs(0)]
if (threads !== here) throw new Error(threads + ' and ' + here)
console.log(threads)`
    writeFileSync(join(folder, 'threads.mjs'), code)
    expect(run(process.execPath, ['threads.mjs'], folder)).toEqual({ code: 0, out: expect.stringMatching(/^(\d+,){5}\d+\n$/), err: '' })
  })

  test('the engine bundled for a browser needs nothing of Node, and gives the same numbers', async () => {
    const entry = `import { loopLine, simulate } from '@loopwright/line'
const path = (from) => ({ from, move: 2 })
const { spec } = loopLine({ zones: 6, carriers: { count: 3, start: 'spread' }, end: 3600, paths: [0, 1, 2, 3, 4, 5].map(path),
  stations: { A: { zone: 0, load: { kind: 'gamma', mean: 20, cv: 0.3 } }, B: { zone: 3, unload: { kind: 'lognormal', mean: 15, cv: 0.2 } } } })
globalThis.told = JSON.stringify(simulate(spec, { seed: '1', replication: 0 }))`
    writeFileSync(join(folder, 'engine.mjs'), `${entry}\nconsole.log(globalThis.told)`)
    const { outputFiles } = await build({
      stdin: { contents: entry, resolveDir: folder },
      bundle: true,
      write: false,
      platform: 'browser',
      format: 'iife',
      logLevel: 'silent',
      loader: {},
    })
    const text = outputFiles[0]!.text
    const world: { told?: string } = {}
    vm.runInNewContext(`globalThis.window = globalThis; ${text}`, world)
    expect(world.told).toMatch(/^\{"/)
    expect(`${world.told}\n`).toBe(run(process.execPath, ['engine.mjs'], folder).out)
    expect(text.length).toBeLessThan(600_000)
  })
})
