/** Programs of the tests, each as one file of JavaScript: processes of them start at once, since nothing has to be found and translated first. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { buildSync } from 'esbuild'
import { afterAll } from 'vitest'
import { TOP } from '../tidy/sources.ts'

/**
 * The program with all that it imports; the file is gone after the tests.
 *
 * @param program  from the top of the project, such as `tests/bench/memory.ts`
 */
export function inOneFile(program: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'loopwright-program-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  const outfile = join(folder, `${basename(program, '.ts')}.mjs`)
  buildSync({
    entryPoints: [join(TOP, program)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    conditions: ['loopwright-source'],
    banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url)" },
    logLevel: 'error',
  })
  return outfile
}
