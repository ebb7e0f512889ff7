/** The soak as one file, with the engine as it is or with one canary in it. */
import { readFileSync, writeFileSync } from 'node:fs'
import { basename } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type BuildOptions, context, type Plugin } from 'esbuild'
import type { Canary } from './canaries.ts'

const SHARED: BuildOptions = {
  entryPoints: [fileURLToPath(new URL('./shift.ts', import.meta.url))],
  bundle: true,
  platform: 'node',
  format: 'esm',
  conditions: ['loopwright-source'],
  banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url)" },
  logLevel: 'silent',
}

/** what stands in the engine that is made now; null: nothing */
let canary: Canary | null = null
let changed = 0
const PLUGIN: Plugin = {
  name: 'canary',
  setup({ onLoad }) {
    onLoad({ filter: /packages\/line\/src\/.+\.ts$/ }, ({ path }) => {
      if (canary === null || basename(path) !== canary.file) return null
      const source = readFileSync(path, 'utf8')
      const places = source.split(canary.find).length - 1
      if (places !== 1) throw new Error(`the place of the canary "${canary.name}" stands ${places} times in ${canary.file}`)
      changed++
      const { find, replace } = canary
      return { contents: source.replace(find, () => replace), loader: 'ts' }
    })
  },
}

export interface Engines {
  /** @throws Error  if the place that the canary changes does not stand in its file exactly once */
  bundle(outfile: string, wanted: Canary | null): Promise<void>
  end(): Promise<void>
}

/** What is read for one engine is not read again for the next. They are made one after another. */
export async function engines(): Promise<Engines> {
  const kept = await context({ ...SHARED, write: false, plugins: [PLUGIN] })
  return {
    async bundle(outfile, wanted) {
      canary = wanted
      changed = 0
      const { outputFiles } = await kept.rebuild()
      if (changed !== (canary === null ? 0 : 1)) throw new Error(`the canary "${canary?.name}" could not be put in`)
      writeFileSync(outfile, outputFiles![0]!.contents)
    },
    end: () => kept.dispose(),
  }
}
