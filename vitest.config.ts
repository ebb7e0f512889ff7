import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** milliseconds until a test counts as one that hangs: no test is that long, also where the machine does ten other things */
const HANGS_MS = 900_000

/** milliseconds from which on the report shows a test's time in colour: it wants the tag `long` */
const LONG_MS = 2000

/** Long files first, so that no process goes on alone at the end: those of `tests`, before the many short ones beside the source. */
class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isShort = ({ moduleId }: TestSpecification): number => Number(moduleId.includes('/packages/'))
    return (await super.sort(files)).toSorted((one, other) => isShort(one) - isShort(other))
  }
}

export default defineConfig({
  test: {
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    // Node's own import, with the loader that the command uses from source: the runner's modules make each name of an import a look-up, and the engine a third as fast.
    experimental: { viteModuleRunner: false, nodeLoader: false },
    // once for each process, after it has said that it is there: it has a minute for that, which a busy machine needs
    setupFiles: ['tests/helpers/loader.js'],
    execArgv: ['--conditions=loopwright-source', '--max-semi-space-size=32'],
    // One process runs many files: starting each anew took two thirds of the time, and nothing here keeps state between files.
    isolate: false,
    pool: 'forks',
    // two more than the two cores that the tests are made for: a test that waits for a browser or a command leaves its core to another
    maxWorkers: 4,
    sequence: { sequencer: LongFirst },
    testTimeout: HANGS_MS,
    hookTimeout: HANGS_MS,
    slowTestThreshold: LONG_MS,
    tags: [{ name: 'long', description: 'takes more than two seconds: left out of `npm run test:quick`' }],
    // a page on a busy machine
    expect: { poll: { timeout: 120_000 } },
  },
})
