/** The soak as one file, with the engine as it is or with one canary in it. */
import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type BuildOptions, type BuildResult, build, buildSync } from 'esbuild'
import type { Canary } from './canaries.ts'

const SHARED: BuildOptions = {
  entryPoints: [fileURLToPath(new URL('./shift.ts', import.meta.url))],
  bundle: true,
  platform: 'node',
  format: 'esm',
  conditions: ['loopwright-source'],
  banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url)" },
  logLevel: 'error',
}

/** @throws Error  if the place that the canary changes does not stand in its file exactly once */
export async function bundleEngine(outfile: string, canary: Canary | null): Promise<void> {
  if (canary === null) {
    buildSync({ ...SHARED, outfile })
    return
  }
  let changed = 0
  const done: BuildResult = await build({
    ...SHARED,
    outfile,
    plugins: [
      {
        name: 'canary',
        setup(builder) {
          builder.onLoad({ filter: /packages\/line\/src\/.+\.ts$/ }, ({ path }) => {
            if (basename(path) !== canary.file) return null
            const source = readFileSync(path, 'utf8')
            const places = source.split(canary.find).length - 1
            if (places !== 1) throw new Error(`the place of the canary "${canary.name}" stands ${places} times in ${canary.file}`)
            changed++
            return { contents: source.replace(canary.find, () => canary.replace), loader: 'ts' }
          })
        },
      },
    ],
  })
  if (done.errors.length > 0 || changed !== 1) throw new Error(`the canary "${canary.name}" could not be put in`)
}
