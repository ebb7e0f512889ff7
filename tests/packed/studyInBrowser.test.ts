/** All studies without Node: bundled for a browser, and run where there is none of what Node has. */
import vm from 'node:vm'
import * as study from '@loopwright/study'
import * as compare from '@loopwright/study/compare'
import { build } from 'esbuild'
import { expect, test } from 'vitest'
import { stationLoop } from '../helpers/stationLoop.ts'
import { TOP } from '../tidy/sources.ts'

/** what a browser has, and a script of it may use */
const WORLD = { MessageChannel, setTimeout, clearTimeout, AbortController, AbortSignal, TextEncoder, structuredClone }

/** all that is said to need nothing of Node */
const studies = { ...study, ...compare }

/** some studies of one line, as somebody would ask them; plain data */
async function asked(of: typeof studies, line: ReturnType<typeof stationLoop>): Promise<string> {
  const options = { seed: 'b', workers: 0 }
  const lines = [3, 2].map((count) => ({ name: String(count), line: { ...line, carriers: { ...line.carriers, count } }, plan: 100 }))
  return JSON.stringify([
    await of.sweepCarriers(line, { counts: [1, 2, 3], replications: 5, plan: 100 }, options),
    await of.compareLines(lines, { replications: 5 }, options),
    await of.findLosses(line, { replications: 3 }, options),
    (await of.traceRun(line, { replication: 0 }, options))!.run.output,
  ])
}

test('bundled for a browser it needs nothing of Node, and gives the same numbers', { tags: 'long' }, async () => {
  const { outputFiles, metafile } = await build({
    stdin: { contents: `export * from '@loopwright/study'\nexport * from '@loopwright/study/compare'`, resolveDir: TOP },
    bundle: true,
    write: false,
    metafile: true,
    platform: 'browser',
    conditions: ['loopwright-source'],
    format: 'iife',
    globalName: 'study',
    logLevel: 'silent',
  })
  const imports = Object.values(metafile.inputs).flatMap((input) => input.imports.filter(({ external }) => external))
  expect(imports.map(({ path }) => path)).toEqual([])
  const context = vm.createContext({ ...WORLD })
  vm.runInContext(outputFiles[0]!.text, context)
  const inBrowser = vm.runInContext('study', context) as typeof studies
  expect(Object.keys(inBrowser).sort()).toEqual(Object.keys(studies).sort())
  expect(vm.runInContext('typeof process + typeof require + typeof Buffer + typeof setImmediate', context)).toBe('undefined'.repeat(4))
  expect(await asked(inBrowser, stationLoop())).toBe(await asked(studies, stationLoop()))
})
